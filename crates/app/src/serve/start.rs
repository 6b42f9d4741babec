//! Starts the server, and fills the folder of a first run with sites to try.

use super::workbench::Workbench;
use super::{answering, events, router};
use crate::outcome::Complaint;
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// A site to try: the name of its folder, and its files.
type Demo = (&'static str, [(&'static str, &'static str); 3]);

macro_rules! demo {
    ($name:literal) => {
        (
            $name,
            [
                (
                    "site.toml",
                    include_str!(concat!("../../../../examples/", $name, "/site.toml")),
                ),
                (
                    "parts.toml",
                    include_str!(concat!("../../../../examples/", $name, "/parts.toml")),
                ),
                (
                    "price-book.toml",
                    include_str!(concat!("../../../../examples/", $name, "/price-book.toml")),
                ),
            ],
        )
    };
}

/// The sites that a first run brings.
const DEMOS: [Demo; 4] = [
    demo!("boatyard"),
    demo!("clinic"),
    demo!("quarry"),
    demo!("vineyard"),
];

/// The folder `gatewright` in the home of whoever is at the computer; made, with the sites to try, where it is not there.
pub(crate) fn own_folder() -> Result<PathBuf, Complaint> {
    let home = ["HOME", "USERPROFILE"]
        .iter()
        .find_map(std::env::var_os)
        .ok_or_else(|| {
            Complaint(
                "No home folder is known here. Name a folder for the jobs: gatewright serve FOLDER"
                    .to_owned(),
            )
        })?;
    let folder = PathBuf::from(home).join("gatewright");
    if !folder.is_dir() {
        // Under another name until it is whole: a first run that breaks off begins again.
        let unfinished = folder.with_extension("unfinished");
        let failed = |error: std::io::Error| {
            Complaint::about(&folder, format_args!("cannot be made ({error})"))
        };
        for (name, files) in DEMOS {
            let job = unfinished.join(name);
            std::fs::create_dir_all(&job).map_err(failed)?;
            for (file, text) in files {
                std::fs::write(job.join(file), text).map_err(failed)?;
            }
        }
        std::fs::rename(&unfinished, &folder).map_err(failed)?;
    }
    Ok(folder)
}

/// Serves until the program is stopped.
pub(crate) fn run(folder: &Path, listener: TcpListener) -> Result<(), Complaint> {
    let failed = |error: std::io::Error| Complaint(format!("The server cannot run ({error})."));
    let port = listener.local_addr().map_err(failed)?.port();
    listener.set_nonblocking(true).map_err(failed)?;
    let workbench = Arc::new(Workbench::open(folder, port)?);
    answering::start(&workbench)?;
    tokio::runtime::Builder::new_multi_thread()
        .enable_io()
        .enable_time()
        .build()
        .map_err(failed)?
        .block_on(async {
            tokio::spawn(events::watch_the_disk(workbench.clone()));
            let listener = tokio::net::TcpListener::from_std(listener)?;
            axum::serve(listener, router(&workbench)).await
        })
        .map_err(failed)
}

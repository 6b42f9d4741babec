//! `gatewright serve`: the workbench in a browser.

use crate::outcome::{Complaint, Outcome, say};
use crate::serve;
use std::net::{Ipv4Addr, TcpListener};
use std::path::{Path, PathBuf};

/// Port that is taken when none is asked for and nobody else has it.
const USUAL_PORT: u16 = 7273;

/// Serves the jobs of a folder until the program is stopped.
pub(crate) fn run(folder: Option<&Path>, port: Option<u16>) -> Result<Outcome, Complaint> {
    let (folder, opened) = match folder {
        Some(folder) => chosen(folder)?,
        None => (serve::own_folder()?, None),
    };
    let listener = listening(port)?;
    let address = listener
        .local_addr()
        .map_err(|error| Complaint(format!("The address cannot be found ({error}).")))?;
    let page = opened.map_or_else(String::new, |job| format!("jobs/{job}"));
    say(&format_args!(
        "The jobs in {} are open at\n\n  http://{address}/{page}\n\nfor this computer alone. Ctrl-C closes the workbench; everything is kept.",
        folder.display()
    ));
    serve::run(&folder, listener)?;
    Ok(Outcome::Holds)
}

/// The folder of jobs that was meant, and the job where the folder of one was named.
fn chosen(folder: &Path) -> Result<(PathBuf, Option<String>), Complaint> {
    let whole = folder.canonicalize().map_err(|error| {
        Complaint::about(
            folder,
            format_args!("cannot be opened ({error}). Name a folder in which each job has a folder of its own, with a site.toml in it."),
        )
    })?;
    if !whole.is_dir() {
        return Err(Complaint::about(
            folder,
            "is not a folder. Name the folder that holds the folders of the jobs.",
        ));
    }
    let one = whole.join("site.toml").is_file();
    match (one, whole.parent(), whole.file_name()) {
        (true, Some(above), Some(name)) => Ok((
            above.to_path_buf(),
            Some(name.to_string_lossy().into_owned()),
        )),
        _ => Ok((whole, None)),
    }
}

/// Listens on this computer alone.
fn listening(port: Option<u16>) -> Result<TcpListener, Complaint> {
    let at = |port: u16| TcpListener::bind((Ipv4Addr::LOCALHOST, port));
    match port {
        Some(port) => at(port).map_err(|error| {
            Complaint(format!(
                "Port {port} cannot be had ({error}). Leave --port out, and a free one is taken."
            ))
        }),
        None => at(USUAL_PORT)
            .or_else(|_| at(0))
            .map_err(|error| Complaint(format!("No port can be had ({error})."))),
    }
}

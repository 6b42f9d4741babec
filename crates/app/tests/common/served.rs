//! A workbench that runs, and a browser's half of the talk with it.

use serde_json::Value;
use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::Duration;
use tempfile::TempDir;

/// A workbench that runs until it is dropped.
pub(crate) struct Served {
    child: Child,
    /// The port that it listens at.
    pub(crate) port: u16,
    /// The folder of its jobs.
    pub(crate) folder: PathBuf,
}

/// What was answered.
#[derive(Debug)]
pub(crate) struct Told {
    /// The status.
    pub(crate) status: u16,
    /// Lines of the head, in small letters.
    pub(crate) head: String,
    /// The body.
    pub(crate) body: Vec<u8>,
}

impl Told {
    /// The body as JSON.
    pub(crate) fn json(&self) -> Value {
        serde_json::from_slice(&self.body)
            .unwrap_or_else(|error| panic!("{error}: {}", String::from_utf8_lossy(&self.body)))
    }

    /// The body of an answer that was given.
    pub(crate) fn good(&self) -> Value {
        assert_eq!(self.status, 200, "{}", String::from_utf8_lossy(&self.body));
        self.json()
    }

    /// A refusal with this status, which says what is so and what to do.
    pub(crate) fn refused(&self, status: u16) -> Value {
        let told = self.json();
        assert_eq!(self.status, status, "{told}");
        for key in ["what", "do"] {
            assert!(
                told[key].as_str().is_some_and(|said| !said.is_empty()),
                "{key}: {told}"
            );
        }
        told
    }
}

/// A folder with copies of example sites.
pub(crate) fn jobs(names: &[&str]) -> TempDir {
    let folder = tempfile::tempdir().unwrap();
    for name in names {
        let job = folder.path().join(name);
        std::fs::create_dir(&job).unwrap();
        for entry in std::fs::read_dir(super::example(name)).unwrap() {
            let path = entry.unwrap().path();
            std::fs::copy(&path, job.join(path.file_name().unwrap())).unwrap();
        }
    }
    folder
}

impl Served {
    /// Starts a workbench for a folder.
    pub(crate) fn start(folder: &Path) -> Self {
        let mut command = Command::new(env!("CARGO_BIN_EXE_gatewright"));
        command.args(["serve", folder.to_str().unwrap(), "--port", "0"]);
        Self::running(command, folder)
    }

    /// Starts one as somebody does who has never done so, with this home.
    pub(crate) fn first_run(home: &Path) -> Self {
        let mut command = Command::new(env!("CARGO_BIN_EXE_gatewright"));
        command.env("HOME", home);
        Self::running(command, &home.join("gatewright"))
    }

    fn running(mut command: Command, folder: &Path) -> Self {
        let mut child = command.stdout(Stdio::piped()).spawn().unwrap();
        let lines = BufReader::new(child.stdout.take().unwrap()).lines();
        let port = lines
            .map_while(Result::ok)
            .find_map(|line| {
                let rest = line.trim().strip_prefix("http://127.0.0.1:")?.to_owned();
                rest.split('/').next()?.parse().ok()
            })
            .expect("the address is printed");
        Self {
            child,
            port,
            folder: folder.to_path_buf(),
        }
    }

    /// Ends it as a sudden loss of power would.
    pub(crate) fn kill(&mut self) {
        self.child.kill().unwrap();
        self.child.wait().unwrap();
    }

    /// The number of its process.
    pub(crate) fn id(&self) -> u32 {
        self.child.id()
    }

    /// The text of the site file of a job.
    pub(crate) fn text(&self, job: &str) -> String {
        std::fs::read_to_string(self.folder.join(job).join("site.toml")).unwrap()
    }

    /// Asks for something.
    pub(crate) fn get(&self, path: &str) -> Told {
        self.ask("GET", path, &[], b"").unwrap()
    }

    /// Sends JSON.
    pub(crate) fn post(&self, path: &str, body: &Value) -> Told {
        let body = body.to_string();
        let json = [("Content-Type", "application/json")];
        self.ask("POST", path, &json, body.as_bytes()).unwrap()
    }

    /// What a job says now.
    pub(crate) fn revision(&self, job: &str) -> String {
        let state = self.get(&format!("/api/jobs/{job}")).good();
        state["revision"].as_str().unwrap().to_owned()
    }

    /// Writes one value.
    pub(crate) fn set(&self, job: &str, expects: &str, path: &str, value: &str) -> Told {
        self.post(
            &format!("/api/jobs/{job}/edits"),
            &serde_json::json!({
                "expects": expects,
                "edits": [{ "do": "set", "path": path, "value": value }],
            }),
        )
    }

    /// Asks with a method, headers and a body; `Host` is ours unless one is given.
    pub(crate) fn ask(
        &self,
        method: &str,
        path: &str,
        headers: &[(&str, &str)],
        body: &[u8],
    ) -> std::io::Result<Told> {
        use std::fmt::Write as _;
        let mut head = format!("{method} {path} HTTP/1.1\r\nConnection: close\r\n");
        if !headers.iter().any(|(name, _)| *name == "Host") {
            write!(head, "Host: 127.0.0.1:{}\r\n", self.port).unwrap();
        }
        for (name, value) in headers {
            write!(head, "{name}: {value}\r\n").unwrap();
        }
        if method != "GET" {
            write!(head, "Content-Length: {}\r\n", body.len()).unwrap();
        }
        let mut bytes = (head + "\r\n").into_bytes();
        bytes.extend_from_slice(body);
        self.send(&bytes)
    }

    /// Sends bytes as they are, and reads the answer to its end.
    pub(crate) fn send(&self, bytes: &[u8]) -> std::io::Result<Told> {
        let mut stream = self.connect()?;
        // Who refuses a long body may close before it has all been sent.
        let _ = stream.write_all(bytes);
        let mut answer = Vec::new();
        let read = stream.read_to_end(&mut answer);
        if answer.is_empty() {
            read?;
        }
        let end = answer
            .windows(4)
            .position(|four| four == b"\r\n\r\n")
            .ok_or_else(|| std::io::Error::other("no head"))?;
        let head = String::from_utf8_lossy(&answer[..end]).to_lowercase();
        let status = head
            .split(' ')
            .nth(1)
            .and_then(|status| status.parse().ok())
            .ok_or_else(|| std::io::Error::other("no status"))?;
        Ok(Told {
            status,
            head,
            body: answer[end + 4..].to_vec(),
        })
    }

    /// A connection.
    pub(crate) fn connect(&self) -> std::io::Result<TcpStream> {
        let stream = TcpStream::connect(("127.0.0.1", self.port))?;
        stream.set_read_timeout(Some(Duration::from_secs(90)))?;
        Ok(stream)
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

//! The workbench answers this computer's own pages alone, and whatever is sent, it stays up and says what is wrong.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common::served::{Served, jobs};
use std::io::{Read as _, Write as _};

#[test]
fn a_foreign_host_or_origin_is_refused() {
    let folder = jobs(&["clinic"]);
    let bench = Served::start(folder.path());
    let port = bench.port;
    let ask = |method: &str, headers: &[(&str, &str)]| {
        bench.ask(method, "/api/jobs", headers, b"").unwrap().status
    };
    for host in [
        format!("127.0.0.1:{port}"),
        format!("localhost:{port}"),
        format!("[::1]:{port}"),
    ] {
        assert_eq!(ask("GET", &[("Host", &host)]), 200, "{host}");
    }
    let foreign = [
        "gate.example".to_owned(),
        format!("gate.example:{port}"),
        format!("127.0.0.1.gate.example:{port}"),
        format!("localhost.gate.example:{port}"),
        "127.0.0.1".to_owned(),
        format!("127.0.0.1:{}", port ^ 1),
        format!("127.0.0.1:{port}:{port}"),
        format!("user@127.0.0.1:{port}"),
        String::new(),
    ];
    for host in &foreign {
        assert_eq!(ask("GET", &[("Host", host)]), 403, "{host}");
    }
    let ours = format!("http://127.0.0.1:{port}");
    assert_eq!(ask("GET", &[("Origin", &ours)]), 200);
    for origin in [
        "null",
        "http://gate.example",
        "https://127.0.0.1",
        "http://127.0.0.1:1",
    ] {
        assert_eq!(ask("GET", &[("Origin", origin)]), 403, "{origin}");
    }
    let json = ("Content-Type", "application/json");
    let undo = |headers: &[(&str, &str)]| {
        let told = bench.ask("POST", "/api/jobs/clinic/undo", headers, b"{}");
        told.unwrap().status
    };
    assert_eq!(undo(&[json, ("Origin", "http://gate.example")]), 403);
    assert_eq!(undo(&[json, ("Sec-Fetch-Site", "cross-site")]), 403);
    assert_eq!(undo(&[("Content-Type", "text/plain")]), 415);
    assert_eq!(undo(&[]), 415);
    assert_eq!(undo(&[json, ("Origin", &ours)]), 409);
    let absolute = format!(
        "GET http://gate.example/api/jobs HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nConnection: close\r\n\r\n"
    );
    assert_eq!(bench.send(absolute.as_bytes()).unwrap().status, 403);
}

#[test]
fn every_answer_forbids_what_is_not_ours() {
    let folder = jobs(&["clinic"]);
    let bench = Served::start(folder.path());
    for path in [
        "/",
        "/api/jobs",
        "/api/jobs/none",
        "/nothing",
        "/assets/paper.css",
    ] {
        let told = bench.get(path);
        for line in [
            "content-security-policy: default-src 'none'; script-src 'self'; style-src 'self'",
            "x-content-type-options: nosniff",
            "referrer-policy: no-referrer",
            "cross-origin-resource-policy: same-origin",
        ] {
            assert!(told.head.contains(line), "{path}: {line}\n{}", told.head);
        }
        assert!(!told.head.contains("unsafe-inline"), "{path}");
        assert!(!told.head.contains("access-control-allow"), "{path}");
    }
}

#[test]
fn no_path_leads_out_of_the_folder() {
    let folder = jobs(&["clinic"]);
    std::fs::write(folder.path().join("secret.toml"), "secret").unwrap();
    std::fs::create_dir(folder.path().join("other")).unwrap();
    std::fs::write(folder.path().join("other/secret.toml"), "secret").unwrap();
    let bench = Served::start(folder.path());
    for job in [
        "..",
        "%2e%2e",
        "..%2f..",
        "clinic%2f..%2fclinic",
        ".gatewright",
        "%00",
        "clinic%00",
        "other",
        "a%5cb",
        "%2fetc",
        "%ff%fe",
        "clinic%2e",
        "%0a",
    ] {
        for rest in [
            "",
            "/answers",
            "/papers/site.toml",
            "/site.toml",
            "/events",
            "/form",
        ] {
            let told = bench.get(&format!("/api/jobs/{job}{rest}"));
            assert!(
                (400..500).contains(&told.status),
                "{job}{rest}: {}",
                told.status
            );
            told.refused(told.status);
        }
    }
    for file in [
        "..%2fsite.toml",
        "..%2f..%2fsecret.toml",
        "papers.json",
        "site.toml",
        "%2e%2e",
    ] {
        bench
            .get(&format!("/api/jobs/clinic/papers/{file}"))
            .refused(404);
        bench.get(&format!("/assets/{file}")).refused(404);
    }
    // What a site names is read from its own folder alone.
    let text = bench
        .text("clinic")
        .replace("\"parts.toml\"", "\"parts.toml\", \"../other/secret.toml\"");
    std::fs::write(folder.path().join("clinic/site.toml"), text).unwrap();
    let state = bench.get("/api/jobs/clinic").good();
    let problems = state["problems"].to_string();
    assert!(problems.contains("there is no parts file"), "{problems}");
    assert!(!problems.contains("\"file\":\"../other"), "{problems}");
}

#[test]
fn what_cannot_be_read_gets_a_refusal_that_says_so() {
    let folder = jobs(&["clinic"]);
    let bench = Served::start(folder.path());
    let json = [("Content-Type", "application/json")];
    let edits = "/api/jobs/clinic/edits";
    let post = |path: &str, body: &[u8]| bench.ask("POST", path, &json, body).unwrap();
    post(edits, b"{").refused(400);
    post(edits, b"\xff\xfe").refused(400);
    post(edits, b"[]").refused(422);
    post(edits, b"{\"expects\": 1, \"edits\": []}").refused(422);
    post(edits, b"{\"expects\": \"x\", \"edits\": [], \"more\": 1}").refused(422);
    post(
        edits,
        b"{\"expects\": \"x\", \"edits\": [{\"do\": \"burn\"}]}",
    )
    .refused(422);
    post(
        "/api/jobs/none/edits",
        b"{\"expects\": \"x\", \"edits\": []}",
    )
    .refused(404);
    post(edits, &vec![b' '; 3 * 1024 * 1024]).refused(413);
    let deep = [vec![b'['; 100_000], vec![b']'; 100_000]].concat();
    post(edits, &deep).refused(422);
    bench
        .ask("DELETE", "/api/jobs", &[], b"")
        .unwrap()
        .refused(405);
    bench.ask("PUT", edits, &json, b"{}").unwrap().refused(405);
    bench.get("/api/nothing").refused(404);
    bench.get("/api/tasks/none").refused(400);
    bench.get("/api/tasks/7").refused(404);
    bench.get("/api/jobs/clinic/form?pth=x").refused(400);
    bench
        .get("/api/jobs/clinic/form?path=device.none")
        .refused(404);
    bench.get("/api/jobs/clinic/answers/none/none").refused(404);
    for bytes in [
        &b"\0\0\0\0\r\n\r\n"[..],
        b"GET\r\n\r\n",
        b"GET / HTTP/9.9\r\n\r\n",
        b"POST / HTTP/1.1\r\nContent-Length: -1\r\n\r\n",
        b"POST / HTTP/1.1\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n",
    ] {
        let told = bench.send(bytes).unwrap();
        assert!((400..600).contains(&told.status), "{told:?}");
    }
    let long = format!("GET /{} HTTP/1.1\r\nHost: x\r\n\r\n", "a".repeat(100_000));
    assert_eq!(bench.send(long.as_bytes()).unwrap().status, 414);
    let heads = "X-Y: z\r\n".repeat(500);
    let many = format!("GET / HTTP/1.1\r\n{heads}\r\n");
    assert_eq!(bench.send(many.as_bytes()).unwrap().status, 431);
    bench.get("/api/jobs").good();
}

#[test]
fn two_hundred_clients_at_once_are_all_answered() {
    let folder = jobs(&["clinic", "boatyard"]);
    let bench = Served::start(folder.path());
    let paths = [
        "/",
        "/api/jobs",
        "/api/jobs/clinic",
        "/api/jobs/boatyard/answers",
        "/assets/paper.css",
    ];
    std::thread::scope(|scope| {
        let clients: Vec<_> = (0..200)
            .map(|client| {
                let bench = &bench;
                scope.spawn(move || {
                    for round in 0..5 {
                        let path = paths[(client + round) % paths.len()];
                        let told = bench.ask("GET", path, &[], b"").unwrap();
                        assert_eq!(told.status, 200, "{path}");
                        assert!(!told.body.is_empty(), "{path}");
                    }
                })
            })
            .collect();
        for client in clients {
            client.join().unwrap();
        }
    });
}

#[test]
fn a_change_is_told_to_whoever_listens() {
    let folder = jobs(&["clinic"]);
    let bench = Served::start(folder.path());
    bench.get("/api/jobs/clinic/answers").good();
    let mut stream = bench.connect().unwrap();
    write!(
        stream,
        "GET /api/jobs/clinic/events HTTP/1.1\r\nHost: 127.0.0.1:{}\r\n\r\n",
        bench.port
    )
    .unwrap();
    let mut heard = String::new();
    let mut until = |wanted: &str| {
        let mut bytes = [0; 4096];
        while !heard.contains(wanted) {
            let read = stream.read(&mut bytes).unwrap();
            assert!(read > 0, "closed: {heard}");
            heard += &String::from_utf8_lossy(&bytes[..read]);
        }
    };
    until(": listening");
    let text = bench.text("clinic");
    std::fs::write(
        folder.path().join("clinic/site.toml"),
        format!("{text}\n# seen\n"),
    )
    .unwrap();
    until("event: changed");
    until("event: answered");
    let revision = bench.revision("clinic");
    until(&revision);
}

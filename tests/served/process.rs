//! A running service: started on a free port, asked to stop by a signal, and killed when a test ends early.

use std::io::{BufRead as _, BufReader, Read as _};
use std::process::{Child, Command, Stdio};

use tonic::transport::{Channel, Endpoint};

use crate::program::program;

/// A running service.
pub(crate) struct Service {
    child: Child,
    address: String,
}

/// How a service ended.
pub(crate) struct Ended {
    pub(crate) code: Option<i32>,
    /// What it wrote on standard error while it compiled.
    pub(crate) loading: String,
    /// What it wrote on standard error after that.
    pub(crate) err: String,
}

impl Service {
    /// Starts the demo library with these arguments; it is ready when this returns.
    pub(crate) fn start(more: &[&str]) -> Self {
        let serve = ["serve", "examples/library", "--listen", "127.0.0.1:0"];
        Self::of(&[&serve, more].concat())
    }

    /// Starts the program with these arguments.
    pub(crate) fn of(arguments: &[&str]) -> Self {
        let mut child = program()
            .args(arguments)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("the program starts");
        let mut line = String::new();
        let out = child.stdout.as_mut().expect("standard output");
        BufReader::new(out).read_line(&mut line).expect("a line");
        let address = line.trim_end().strip_prefix("listening on ");
        let address = address
            .unwrap_or_else(|| panic!("no address in `{line}`"))
            .to_owned();
        Self { child, address }
    }

    /// Where it listens.
    pub(crate) fn address(&self) -> &str {
        &self.address
    }

    /// The number of its process.
    pub(crate) fn id(&self) -> u32 {
        self.child.id()
    }

    /// A new connection.
    pub(crate) async fn connect(&self) -> Channel {
        let endpoint = Endpoint::from_shared(format!("http://{}", self.address)).expect("an address");
        endpoint.connect().await.expect("a connection")
    }

    /// Sends a signal: `TERM`, `INT`.
    pub(crate) fn signal(&self, name: &str) {
        let id = self.child.id().to_string();
        let sent = Command::new("kill").args(["-s", name, &id]).status();
        assert!(sent.expect("kill runs").success());
    }

    /// Waits for its end.
    pub(crate) fn ended(mut self) -> Ended {
        let status = self.child.wait().expect("it ends");
        let mut all = String::new();
        let pipe = self.child.stderr.as_mut().expect("standard error");
        pipe.read_to_string(&mut all).expect("text");
        let lines = all.split_inclusive('\n');
        let (loading, err) = lines.partition(|line| line.starts_with("compiling "));
        Ended {
            code: status.code(),
            loading,
            err,
        }
    }
}

impl Drop for Service {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

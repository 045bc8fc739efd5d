//! Being told to stop: by SIGTERM, or Ctrl-C.

/// Waits until the program is told to stop. Both signals are listened to from the moment this is made.
pub(super) struct Stop {
    #[cfg(unix)]
    terminate: tokio::signal::unix::Signal,
    #[cfg(unix)]
    interrupt: tokio::signal::unix::Signal,
}

impl Stop {
    /// Begins to listen.
    #[cfg(unix)]
    pub(super) fn listen() -> std::io::Result<Self> {
        use tokio::signal::unix::{SignalKind, signal};
        Ok(Self {
            terminate: signal(SignalKind::terminate())?,
            interrupt: signal(SignalKind::interrupt())?,
        })
    }

    /// Begins to listen.
    #[cfg(not(unix))]
    pub(super) fn listen() -> std::io::Result<Self> {
        Ok(Self {})
    }

    /// Waits for one signal; asked again, for the next.
    #[cfg(unix)]
    pub(super) async fn told(&mut self) {
        tokio::select! {
            _ = self.terminate.recv() => {}
            _ = self.interrupt.recv() => {}
        }
    }

    /// Waits for one signal; asked again, for the next.
    #[cfg(not(unix))]
    pub(super) async fn told(&mut self) {
        let _ = tokio::signal::ctrl_c().await;
    }
}

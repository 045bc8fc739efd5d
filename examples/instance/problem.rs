//! What can be wrong with a file, said with its place.

use std::path::Path;

use astragal_core::limit::Limit;
use thiserror::Error;

/// Why there is no answer.
#[derive(Debug, Error)]
pub(crate) enum Problem {
    /// A file cannot be read.
    #[error("{file}: {error}")]
    Read { file: String, error: std::io::Error },
    /// A file is not what it should be.
    #[error("{place}: {what}")]
    Wrong { place: String, what: String },
    /// The instance is too large.
    #[error(transparent)]
    Limit(#[from] Limit),
    /// The answer cannot be written.
    #[error("the answer cannot be written: {0}")]
    Write(#[from] std::io::Error),
}

impl Problem {
    pub(crate) fn wrong(place: &str, what: impl Into<String>) -> Self {
        Self::Wrong {
            place: place.to_owned(),
            what: what.into(),
        }
    }
}

/// The text of a file.
pub(crate) fn read(file: &Path) -> Result<String, Problem> {
    std::fs::read_to_string(file).map_err(|error| Problem::Read {
        file: file.display().to_string(),
        error,
    })
}

//! Stub, being written.
use astragal_model::Template;
use super::{PlacedText, Scope};
pub(crate) fn template(_: &PlacedText, _: &Scope<'_>) -> Option<Template> { None }

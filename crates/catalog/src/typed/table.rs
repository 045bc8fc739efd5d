//! Stub, being written.
use astragal_model::{PartIndex, RowMatch, Table, ValueType};
use crate::sheet::Sheet;
use super::{PlacedText, Scope};
pub(crate) fn list_table(_: &Sheet, _: &Scope<'_>, _: &[Option<PartIndex>]) -> Option<Vec<Table>> { None }
pub(crate) fn matrix_table(_: &Sheet, _: &Scope<'_>, _: &[Option<PartIndex>], _: &PlacedText, _: &PlacedText) -> Option<Vec<Table>> { None }
pub(crate) fn figure_table(_: &Sheet, _: &Scope<'_>, _: &[Option<PartIndex>], _: Option<&[PlacedText]>, _: &PlacedText, _: ValueType, _: RowMatch) -> Option<Vec<Table>> { None }

//! For tests only: a second, naive reading of what a catalog means, and generators of random catalogs and units.
//!
//! [`reading`] works out the same answers as `astragal_model::judge`, straight from the words of the meaning, in
//! another style: by demand instead of by plan, by name instead of by position, truth by a written table, numbers
//! by another library. [`generate`] makes random catalogs and units from a seed. [`compare`] puts both side by side.
//!
//! Always holds: nothing here is used by the engine; of the model only its data types are used.

pub mod census;
pub mod chance;
pub mod compare;
pub mod generate;
pub mod reading;

//! What is asked in a comparison of completions, and what is to be expected.

pub(crate) mod expected;
pub(crate) mod found;
pub(crate) mod selection;

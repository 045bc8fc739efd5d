//! The line that names what a unit was tested to.
//!
//! `LC-PG35: 914 × 1524 mm (36 × 60 in) – H` is class LC, 35 psf, at 36 x 60 in, hung.
//!
//! Always holds: the size is the **tested** one, width before height; millimetres are rounded to whole ones, inches are exact.
//!
//! Source: the form of the designation in NAFS, from memory.

use astragal_exact::{LengthUnit, Number};

use super::{Class, Grade, Size};
use crate::refusal::shown;
use crate::{Basis, Fact, InputError};

/// Where the form stands.
pub const DESIGNATION_BASIS: Basis = Basis::from_memory("NAFS", "designation");

/// LIMIT: the letters of an operator code.
const CODE_LETTERS_MOST: usize = 8;

/// Returns the designation of a tested unit.
///
/// The operator code is the caller's (`H` hung, `C` casement ...), letters and digits only.
///
/// # Errors
/// [`InputError`] for a grade below that of the class, a size that is none, or a code that is none.
///
/// # Source
/// [`DESIGNATION_BASIS`].
///
/// # Examples
/// ## A hung window
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::structure::{Class, Grade, Size, designation};
/// let tested = Size { width: Number::from(36), height: Number::from(60) };
/// let text = designation(Class::LC, Grade::new(&Number::from(35))?, &tested, "H")?;
/// assert_eq!(text, "LC-PG35: 914 × 1524 mm (36 × 60 in) – H");
/// assert!(designation(Class::AW, Grade::new(&Number::from(35))?, &tested, "H").is_err());
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn designation(class: Class, grade: Grade, tested: &Size, operator: &str) -> Result<String, InputError> {
    class.check(grade)?;
    tested.check()?;
    let letters = (1..=CODE_LETTERS_MOST).contains(&operator.len());
    if !letters || !operator.bytes().all(|byte| byte.is_ascii_alphanumeric()) {
        return Err(InputError {
            fact: Fact::Operation,
            found: shown(operator),
            expected: "an operator code of one to eight letters or digits".to_owned(),
        });
    }
    let (width, height) = (&tested.width, &tested.height);
    Ok(format!(
        "{class}-{grade}: {} × {} mm ({} × {} in) – {operator}",
        millimetres(width),
        millimetres(height),
        inches(width),
        inches(height)
    ))
}

fn millimetres(length: &Number) -> String {
    let in_one = LengthUnit::Millimetre.in_inches();
    length
        .checked_div(&in_one)
        .map(|count| count.to_fixed(0))
        .unwrap_or_default()
}

fn inches(length: &Number) -> String {
    length.to_mixed_fraction(64).unwrap_or_else(|| length.to_string())
}

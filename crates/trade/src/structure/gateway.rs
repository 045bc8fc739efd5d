//! Whether what was tested is large enough to be rated at all: the gateway size of its kind.
//!
//! Where the gateway of a kind is 36 x 60 in, a specimen of 36 x 60 is large enough and one of 48 x 59 in is not, though its area is
//! larger.
//!
//! Always holds: both the width and the height count, each by itself. The sizes of the standard's table are **not** encoded, since
//! they were not seen: the caller has them.
//!
//! Source: NAFS 2008, clause 4.2, read in an excerpt.

use crate::measuring::Size;
use crate::{Basis, Fact, InputError, Truth};

/// Where the rule stands.
pub const GATEWAY_BASIS: Basis = Basis::second_hand("NAFS", "gateway sizes, clause 4.2 of 2008");

/// Returns whether a specimen is at least the gateway size in both width and height. Equal is large enough.
///
/// # Errors
/// [`InputError`] for a width or height that is none.
///
/// # Source
/// [`GATEWAY_BASIS`].
///
/// # Examples
/// ## Wide enough and not tall enough
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Truth;
/// use astragal_trade::structure::{Size, is_gateway_size};
/// let size = |width: i64, height: i64| Size { width: Number::from(width), height: Number::from(height) };
/// let gateway = size(36, 60);
/// assert_eq!(is_gateway_size(&size(36, 60), Some(&gateway))?, Truth::Yes);
/// assert_eq!(is_gateway_size(&size(48, 59), Some(&gateway))?, Truth::No);
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## The gateway size is the caller's
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Fact;
/// use astragal_trade::structure::{Size, is_gateway_size};
/// let specimen = Size { width: Number::from(36), height: Number::from(60) };
/// assert_eq!(is_gateway_size(&specimen, None)?.missing(), [Fact::GatewaySize].into());
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn is_gateway_size(specimen: &Size, gateway: Option<&Size>) -> Result<Truth, InputError> {
    specimen.check()?;
    if let Some(gateway) = gateway {
        gateway.check()?;
    }
    Ok(Truth::of(Fact::GatewaySize, gateway, |gateway| {
        specimen.width >= gateway.width && specimen.height >= gateway.height
    }))
}

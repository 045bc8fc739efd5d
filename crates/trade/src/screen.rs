//! How open an insect screen is.
//!
//! 18 x 16 wires in an inch of 0.011 in strand leave (1 - 18 x 0.011) x (1 - 16 x 0.011) = 66.1 % open. A finer mesh of thinner
//! strand can be **more** open: the mesh count alone ranks nothing.
//!
//! Always holds: the open share is above 0 and below 1, exact; a strand as wide as its spacing leaves no screen and is refused.
//! A screen keeps insects out. It is no fall protection and no guard: what the code asks at an upper floor is asked as if there
//! were none ([`crate::fall_protection`]).
//!
//! Source: open area as opening over opening and wire, squared for a square mesh, by a wire-cloth supplier's formula.

use astragal_exact::Number;

use crate::constant::over;
use crate::refusal::refused;
use crate::{Basis, Fact, InputError};

/// Where the formula stands.
pub const BASIS: Basis = Basis::second_hand("wire-cloth supplier's formula for open area", "");

/// LIMIT: the finest mesh that is taken for a screen, in wires to the inch.
pub const MESH_MOST: i64 = 200;

/// A mesh by its wires in an inch, each way, and the diameter of its strand.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Mesh {
    /// Wires in an inch, one way.
    pub across: Number,
    /// Wires in an inch, the other way.
    pub down: Number,
    /// The diameter of a strand, in inches.
    pub strand: Number,
}

impl Mesh {
    /// Returns the share of the screen that is open, between 0 and 1.
    ///
    /// # Errors
    /// [`InputError`] for a mesh or a strand that cannot be one, and for strands that leave no gap.
    ///
    /// # Cost
    /// Five exact operations.
    ///
    /// # Source
    /// [`BASIS`].
    ///
    /// # Examples
    /// ## The usual residential mesh
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::screen::Mesh;
    /// let strand = Number::from_decimal("0.011").unwrap_or_default();
    /// let mesh = Mesh { across: Number::from(18), down: Number::from(16), strand };
    /// assert_eq!(mesh.open_area()?.to_string(), "0.660848");
    /// # Ok::<(), astragal_trade::InputError>(())
    /// ```
    /// ## Strands that touch
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::screen::Mesh;
    /// let strand = Number::from_decimal("0.05").unwrap_or_default();
    /// let mesh = Mesh { across: Number::from(20), down: Number::from(16), strand };
    /// assert!(mesh.open_area().is_err());
    /// ```
    pub fn open_area(&self) -> Result<Number, InputError> {
        self.check()?;
        let open = |count: &Number| Number::ONE - count * &self.strand;
        Ok(open(&self.across) * open(&self.down))
    }

    /// Returns the two gaps between strands, in millimetres: across, down.
    ///
    /// # Errors
    /// As [`Mesh::open_area`].
    pub fn gaps_millimetres(&self) -> Result<(Number, Number), InputError> {
        self.check()?;
        let gap = |count: &Number| {
            let spacing = Number::ONE.checked_div(count).unwrap_or_default();
            (spacing - &self.strand) * over::<10>(254)
        };
        Ok((gap(&self.across), gap(&self.down)))
    }

    fn check(&self) -> Result<(), InputError> {
        for count in [&self.across, &self.down] {
            if !count.is_positive() || *count > Number::from(MESH_MOST) {
                let expected = "a number above 0 and at most 200";
                return Err(refused(Fact::MeshCount, count, expected));
            }
            if !self.strand.is_positive() || count * &self.strand >= Number::ONE {
                let expected = "a diameter in inches above 0 and below the spacing of the wires";
                return Err(refused(Fact::StrandDiameter, &self.strand, expected));
            }
        }
        Ok(())
    }
}

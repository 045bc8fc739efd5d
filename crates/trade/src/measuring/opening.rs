//! One unit by three conventions: rough opening, net frame, daylight opening.
//!
//! A frame of 35 1/2 x 59 1/2 in stands in a rough opening of 36 x 60 in with a clearance of 1/2 in each way, and shows
//! 30 1/2 x 54 1/2 in of daylight when frame and sash cover 5 in each way.
//!
//! Always holds: the three are three types, so that no size of one convention passes for another. Clearances and covers
//! are the caller's: they differ by plant and wall, and none is encoded here. Both ways exact: a frame that is put into
//! its rough opening and taken out again is the same frame.
//! Source: the names are common practice, from memory.

use astragal_exact::Number;

use super::error::{MeasuringError, Side};
use super::length_error;
use super::size::Size;
use crate::fact::Fact;

/// The hole in the framing, before anything stands in it.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub struct RoughOpening(pub Size);

/// The outside of the frame of a unit, exact.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub struct NetFrame(pub Size);

/// What can be seen through: the visible glass.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub struct DaylightOpening(pub Size);

/// What is between two conventions, both sides together, in inches; 0 or more.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub struct Clearance {
    /// Left and right together.
    pub width: Number,
    /// Top and bottom together.
    pub height: Number,
}

impl RoughOpening {
    /// Returns the frame that leaves this clearance in the rough opening.
    ///
    /// # Errors
    /// - [`MeasuringError::Input`]: a size is not above 0 and at most 50 ft, or a clearance is below 0.
    /// - [`MeasuringError::NothingLeft`]: the clearance takes all of it.
    ///
    /// # Examples
    /// ## Half an inch each way
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::measuring::{Clearance, RoughOpening, Size};
    /// let half = Number::ratio(1, 2).ok_or("no number")?;
    /// let clearance = Clearance { width: half.clone(), height: half };
    /// let rough = RoughOpening(Size::new(Number::from(36), Number::from(60)));
    /// assert_eq!(rough.net_frame(&clearance)?.0.to_string(), "35 1/2 in x 59 1/2 in");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    /// ## More than there is
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::measuring::{Clearance, RoughOpening, Size};
    /// let clearance = Clearance { width: Number::from(36), height: Number::ZERO };
    /// let rough = RoughOpening(Size::new(Number::from(36), Number::from(60)));
    /// let error = rough.net_frame(&clearance).err().map(|error| error.to_string());
    /// assert_eq!(error.as_deref(), Some("nothing is left of the width `36 in` less `36 in`"));
    /// ```
    pub fn net_frame(&self, clearance: &Clearance) -> Result<NetFrame, MeasuringError> {
        less(&self.0, clearance).map(NetFrame)
    }
}

impl NetFrame {
    /// Returns the rough opening that gives the frame this clearance.
    ///
    /// # Errors
    /// [`MeasuringError::Input`]: a size is not above 0 and at most 50 ft, or a clearance is below 0.
    ///
    /// # Examples
    /// ## Half an inch each way
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::measuring::{Clearance, NetFrame, Size};
    /// let half = Number::ratio(1, 2).ok_or("no number")?;
    /// let clearance = Clearance { width: half.clone(), height: half };
    /// let frame = NetFrame(Size::new(Number::from(36), Number::from(60)));
    /// assert_eq!(frame.rough_opening(&clearance)?.0.to_string(), "36 1/2 in x 60 1/2 in");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    /// ## A clearance below nothing
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::measuring::{Clearance, NetFrame, Size};
    /// let clearance = Clearance { width: Number::from(-1), height: Number::ZERO };
    /// assert!(NetFrame(Size::new(Number::from(36), Number::from(60))).rough_opening(&clearance).is_err());
    /// ```
    pub fn rough_opening(&self, clearance: &Clearance) -> Result<RoughOpening, MeasuringError> {
        length_error::unit(&self.0)?;
        let Size { width, height } = &self.0;
        taken(clearance)?;
        let rough = Size::new(width + &clearance.width, height + &clearance.height);
        length_error::unit(&rough)?;
        Ok(RoughOpening(rough))
    }

    /// Returns what is seen through when frame and sash cover this much, both sides together.
    ///
    /// # Errors
    /// As [`RoughOpening::net_frame`].
    ///
    /// # Examples
    /// ## Frame and sash of 2 1/2 in on each side
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::measuring::{Clearance, NetFrame, Size};
    /// let covered = Clearance { width: Number::from(5), height: Number::from(5) };
    /// let frame = NetFrame(Size::new(Number::from(36), Number::from(60)));
    /// assert_eq!(frame.daylight_opening(&covered)?.0.to_string(), "31 in x 55 in");
    /// # Ok::<(), astragal_trade::measuring::MeasuringError>(())
    /// ```
    /// ## All covered
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::measuring::{Clearance, NetFrame, Size};
    /// let covered = Clearance { width: Number::from(5), height: Number::from(60) };
    /// assert!(NetFrame(Size::new(Number::from(36), Number::from(60))).daylight_opening(&covered).is_err());
    /// ```
    pub fn daylight_opening(&self, covered: &Clearance) -> Result<DaylightOpening, MeasuringError> {
        less(&self.0, covered).map(DaylightOpening)
    }
}

fn less(size: &Size, clearance: &Clearance) -> Result<Size, MeasuringError> {
    length_error::unit(size)?;
    let Size { width, height } = size;
    taken(clearance)?;
    Ok(Size::new(
        left_of(Side::Width, width, &clearance.width)?,
        left_of(Side::Height, height, &clearance.height)?,
    ))
}

fn taken(clearance: &Clearance) -> Result<(), MeasuringError> {
    length_error::distance(Fact::DeductionWidth, &clearance.width)?;
    length_error::distance(Fact::DeductionHeight, &clearance.height)?;
    Ok(())
}

/// What is left of `whole` less `off`, when anything is.
pub(super) fn left_of(side: Side, whole: &Number, off: &Number) -> Result<Number, MeasuringError> {
    let left = whole - off;
    if left.is_positive() {
        return Ok(left);
    }
    Err(MeasuringError::NothingLeft {
        side,
        whole: whole.clone(),
        off: off.clone(),
    })
}

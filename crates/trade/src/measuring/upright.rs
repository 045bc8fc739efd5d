//! The largest upright rectangle in an opening that may stand askew.
//!
//! 36 x 60 in with diagonals of 70 and 69 1/2: when the sides lean, they lean by 0.484 in, and 35.516 x 60 in stands upright in
//! it; when head and sill slope instead, 36 x 59.709 in does. Not knowing which, 35.516 x 59.709 in fits either way.
//!
//! # The geometry
//!
//! The opening is taken for a parallelogram: bottom side (w, s), left side (e, h), with w and h above 0, a **lean** e of the
//! jambs over the whole height and a **slope** s of head and sill over the whole width. Its diagonals are
//! (w + e, h + s) and (w - e, h - s), so that
//!
//! d1^2 - d2^2 = 4 (w e + h s).   (1)
//!
//! *Which rectangles fit.* A parallelogram is where two strips cross, and an upright rectangle of x by y lies in a strip when
//! its extent across it is at most the strip's. With area A = w h - s e, that is
//!
//! h x + |e| y <= A   and   w y + |s| x <= A.   (2)
//!
//! *What a tape reads.* A tape held level between the jambs reads the chord W = A / h, and one held plumb reads H = A / w.
//! In these, (2) says x <= W - |e| y / h and y <= H - |s| x / w. With y <= h and x <= w it is enough that
//!
//! x <= W - |e|   and   y <= H - |s|.   (3)
//!
//! (y = H - |s| is at most h: H = h - s e / w, which is above h only when lean and slope turn the same way round, and then by
//! |s| |e| / w, at most |s| since |e| <= w. Likewise x.) So **width less the lean, height less the slope, always fits**. When only
//! one is not 0 it is also the largest: with s = 0, x = W - |e| y / h has the area x y, which grows with y up to y = h as long
//! as |e| <= w / 2. More is refused.
//!
//! *From the diagonals alone.* Write D = |d1^2 - d2^2| / 4. When head and sill are level, s = 0 and W = w: the lean is D / W
//! exactly. When the jambs are plumb, the slope is D / H exactly. Taking both off fits either case, and every case between, in
//! which lean and slope lengthen the same diagonal: then D = w|e| + h|s|, so |e| <= D / w <= D / W and |s| <= D / H. It does not
//! cover lean and slope that work against each other in (1). A rectangle that stands crooked has equal diagonals: only a level
//! shows that, and a finding says that none was held.
//!
//! *With a level.* What it reads is taken: when both are read, |e| and |s| are known and (3) holds with no assumption. When only
//! one is read, say |e|, then (1) allows two slopes: | D - W|e| | / H, and (D + W|e|) / H when the two work against each other.
//! The smaller is taken, so that **the size holds unless lean and slope work against each other**: 36 x 60 in with a lean of 1/4
//! and a slope of 0.3 the other way has diagonals 0.257 apart, the jambs explain all of it, and nothing comes off the height.
//! Wherever the two slopes differ a finding says so and asks for the other level. When W|e| is more than D, the two must work
//! against each other, or a reading is wrong; beyond the tolerance of diagonals that is a finding, and the larger of the two
//! slopes is taken. When both are read, (1) asks that D be W|e| + H|s| or their difference; when it is
//! neither, within the tolerance of diagonals, that is a finding, and what the level or the diagonals say is taken, whichever
//! is more. The tolerance: the difference of diagonals that the level asks for and the one that was read, 1/4 in apart.
//!
//! *Three readings that differ.* The smallest governs, and it divides D, so that nothing comes out larger for it. With jambs
//! that are straight but not parallel the same numbers fit still (a property that is tested). Jambs or heads that bow between
//! readings are not covered: the spread of the readings is all that shows them.
//!
//! *Tapes held along a sloping head* read w sqrt(1 + (s/w)^2), which is more than w by at most s^2 / 2w: 0.001 in where 36 in slope
//! by 1/4. This is not corrected.
//!
//! Always holds: exact fractions; no square root is taken for the size, and none is rounded.
//! Source: the derivation above; nothing was taken from a text.

use astragal_exact::Number;

use super::askew::Askew;
use super::diagonals;
use super::error::{MeasuringError, Side};
use super::finding::{Finding, tolerances};
use super::readings::{Governing, Readings};
use super::size::Size;
use crate::fact::Fact;
use crate::interval::Interval;
use crate::truth::Missing;

/// What the readings of one opening say.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Measured {
    /// Which width governs; `None` when none was read.
    pub width: Option<Governing>,
    /// Which height governs; `None` when none was read.
    pub height: Option<Governing>,
    /// What comes off the width for sides that lean, in inches.
    pub lean: Number,
    /// What comes off the height for a head and sill that slope, in inches.
    pub slope: Number,
    /// The largest upright rectangle, exact; `None` when no width or no height was read.
    pub upright: Option<Size>,
    /// What somebody should look at, sorted.
    pub findings: Vec<Finding>,
    /// What was not read at all, and would change the answer.
    pub missing: Missing,
}

/// Says what the readings of one opening amount to: which governs, the largest upright rectangle, what to look at.
///
/// The rectangle is the smallest width less what the sides lean, by the smallest height less what head and sill slope. It
/// is worked from what was read: without diagonals and without a level nothing comes off, and a finding says what is not
/// known. The deduction for the unit is another question: [`deduct`](super::deduct).
///
/// # Errors
/// - [`MeasuringError::Input`]: a reading that cannot be one.
/// - [`MeasuringError::DiagonalTooFar`], [`MeasuringError::DiagonalsOfNoOpening`]: diagonals that no opening of these
///   sides has.
/// - [`MeasuringError::LeansTooFar`]: more than half of the shorter side would come off.
///
/// # Cost
/// Constant; two square roots.
///
/// # Examples
/// ## Diagonals that differ, and no level
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::measuring::{Readings, measure};
/// let three = |inches: i64| [(); 3].map(|()| Some(Number::from(inches)));
/// let readings = Readings {
///     widths: three(36),
///     heights: three(60),
///     diagonals: [Number::ratio(140, 2), Number::ratio(139, 2)],
///     ..Readings::default()
/// };
/// let measured = measure(&readings)?;
/// assert_eq!(measured.lean.to_fixed(3), "0.484");
/// let size = measured.upright.ok_or("no size")?;
/// assert_eq!((size.width.to_fixed(3), size.height.to_fixed(3)), ("35.516".into(), "59.709".into()));
/// assert!(measured.findings.iter().any(|finding| finding.id() == "diagonals_differ"));
/// assert!(measured.findings.iter().any(|finding| finding.id() == "either_way"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
/// ## Diagonals that no such opening has
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::measuring::{Readings, measure};
/// let three = |inches: i64| [(); 3].map(|()| Some(Number::from(inches)));
/// let readings = Readings {
///     widths: three(36),
///     heights: three(60),
///     diagonals: [Some(Number::from(70)), Some(Number::from(75))],
///     ..Readings::default()
/// };
/// let error = measure(&readings).err().map(|error| error.to_string()).unwrap_or_default();
/// assert!(error.starts_with("diagonals of the opening are `70 in` and `75 in`; expected"), "{error}");
/// ```
pub fn measure(readings: &Readings) -> Result<Measured, MeasuringError> {
    readings.checked()?;
    let (width, height) = (readings.governing_width(), readings.governing_height());
    let mut findings = out_of_tolerance(readings, [width.as_ref(), height.as_ref()]);
    findings.extend(not_read(readings));
    let (mut askew, mut upright) = (Askew::default(), None);
    if let (Some(width), Some(height)) = (&width, &height) {
        diagonals::possible(&between(width), &between(height), &readings.diagonals)?;
        let sides = Size::new(width.smallest.clone(), height.smallest.clone());
        askew = Askew::of(readings, &sides);
        findings.extend(askew.finding.take());
        upright = Some(askew.off(&sides)?);
    }
    findings.sort();
    Ok(Measured {
        missing: missing(readings, width.as_ref(), height.as_ref()),
        width,
        height,
        lean: askew.lean,
        slope: askew.slope,
        upright,
        findings,
    })
}

fn between(readings: &Governing) -> Interval {
    Interval::between(readings.smallest.clone(), readings.largest.clone())
}

fn out_of_tolerance(readings: &Readings, sides: [Option<&Governing>; 2]) -> Vec<Finding> {
    let allowed = tolerances();
    let mut findings = Vec::new();
    for (side, governing) in [Side::Width, Side::Height].into_iter().zip(sides) {
        findings.extend(
            governing
                .map(Governing::spread)
                .filter(|spread| *spread > allowed.spread)
                .map(|spread| Finding::Spread(side, spread)),
        );
    }
    if let [Some(first), Some(second)] = &readings.diagonals {
        let difference = (first - second).abs();
        if difference > allowed.diagonals {
            findings.push(Finding::DiagonalsDiffer(difference));
        }
    }
    let above = |reading: &Option<Number>| reading.clone().filter(|reading| *reading > allowed.level);
    findings.extend(above(&readings.out_of_plumb).map(Finding::OutOfPlumb));
    findings.extend(above(&readings.out_of_level).map(Finding::OutOfLevel));
    let shallow = readings
        .pocket_depth
        .clone()
        .filter(|depth| *depth < allowed.pocket_depth);
    findings.extend(shallow.map(Finding::PocketShallow));
    findings
}

/// Whether the diagonals differ, or a level was off.
fn stands_askew(readings: &Readings) -> bool {
    let [first, second] = &readings.diagonals;
    let differ = first.is_some() && second.is_some() && first != second;
    let levels = [&readings.out_of_plumb, &readings.out_of_level];
    differ || levels.into_iter().flatten().any(Number::is_positive)
}

fn not_read(readings: &Readings) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (side, three) in [(Side::Width, &readings.widths), (Side::Height, &readings.heights)] {
        let read = three.iter().flatten().count();
        if read < three.len() {
            findings.push(Finding::FewerReadings(side, read));
        }
    }
    let sides = [&readings.widths, &readings.heights];
    let sides = sides
        .iter()
        .filter(|three| three.iter().any(Option::is_some))
        .count();
    let has_no_level = readings.out_of_plumb.is_none() && readings.out_of_level.is_none();
    match &readings.diagonals {
        [Some(first), Some(second)] if sides == 2 => {
            if first != second && has_no_level {
                findings.push(Finding::EitherWay);
            }
        }
        [Some(_), Some(_)] => {}
        _ => {
            let missing = readings.diagonals.iter().filter(|one| one.is_none()).count();
            findings.push(Finding::DiagonalsMissing(missing));
        }
    }
    if sides == 1 && stands_askew(readings) {
        findings.push(Finding::NotTakenOff);
    }
    if readings.out_of_plumb.is_none() {
        findings.push(Finding::NotLevelled(Fact::OutOfPlumb));
    }
    if readings.out_of_level.is_none() {
        findings.push(Finding::NotLevelled(Fact::OutOfLevel));
    }
    findings
}

fn missing(readings: &Readings, width: Option<&Governing>, height: Option<&Governing>) -> Missing {
    let absent = [
        (Fact::OpeningWidth, width.is_none()),
        (Fact::OpeningHeight, height.is_none()),
        (
            Fact::OpeningDiagonal,
            readings.diagonals.iter().any(Option::is_none),
        ),
        (Fact::OutOfPlumb, readings.out_of_plumb.is_none()),
        (Fact::OutOfLevel, readings.out_of_level.is_none()),
    ];
    absent
        .into_iter()
        .filter_map(|(fact, is_absent)| is_absent.then_some(fact))
        .collect()
}

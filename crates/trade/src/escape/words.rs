//! Answers about escape as sentences that a person reads.
//!
//! `clear width is 19 3/4 in, 1/4 in less than 20 in (IRC 2021 R310.2.2)`.
//!
//! Always holds: no sentence says that anything is approved; what rests on memory is flagged.

use std::fmt;

use astragal_exact::{AreaUnit, LengthUnit, Number, format_area, format_length};

use super::{
    Amount, Answer, Condition, Excuse, Remark, Requirement, RoomAnswer, RoomUse, RoomVerdict, Scope,
    Shortfall, Verdict,
};
use crate::basis::Status;
use crate::interval::Interval;
use crate::truth::listed;

impl Answer {
    /// Returns the answer as sentences: the verdict first, then what it lacks, what is missing, what may be excused, remarks.
    #[must_use]
    pub fn sentences(&self) -> Vec<String> {
        let mut sentences = vec![self.verdict_sentence()];
        sentences.extend(self.shortfalls.iter().map(ToString::to_string));
        if self.verdict == Verdict::FallsShort && !self.missing.is_empty() {
            sentences.push(format!("not known beside that: {}", listed(&self.missing)));
        }
        sentences.extend(self.excuse.sentence());
        sentences.extend(self.remarks.iter().map(|remark| remark.words().to_owned()));
        let recalled: Vec<String> = self
            .bases
            .iter()
            .filter(|basis| basis.status == Status::FromMemory)
            .map(ToString::to_string)
            .collect();
        if !recalled.is_empty() {
            sentences.push(format!("rests on {}", recalled.join(", ")));
        }
        sentences
    }

    fn verdict_sentence(&self) -> String {
        let Self { edition, missing, .. } = self;
        let name = if self.name.is_empty() {
            "the opening".to_owned()
        } else {
            format!("`{}`", self.name)
        };
        match self.verdict {
            Verdict::Meets => {
                format!("{name} has what {edition} asks of an escape opening; check with the local code")
            }
            Verdict::FallsShort => format!("{name} falls short of what {edition} asks of an escape opening"),
            Verdict::Undecided => {
                format!(
                    "{name} cannot be decided by {edition}; missing: {}",
                    listed(missing)
                )
            }
        }
    }
}

impl RoomAnswer {
    /// Returns the answer as sentences: about the room first, then about each opening that does not qualify where none does.
    #[must_use]
    pub fn sentences(&self) -> Vec<String> {
        let mut sentences = vec![self.verdict_sentence()];
        if self.openings.is_empty() && self.verdict == RoomVerdict::Undecided {
            sentences.push("no opening of it was given".to_owned());
        }
        if matches!(
            self.verdict,
            RoomVerdict::NoneOfThoseGiven | RoomVerdict::Undecided
        ) {
            sentences.extend(self.openings.iter().flat_map(Answer::sentences));
        }
        if self.verdict == RoomVerdict::NoneOfThoseGiven && self.excusable().next().is_some() {
            sentences.push("none qualifies, but one may be excused; ask the building official".to_owned());
        }
        sentences
    }

    fn verdict_sentence(&self) -> String {
        let basis = self.basis;
        let room = self.room_use.map_or("a room of unknown use", RoomUse::words);
        match self.verdict {
            RoomVerdict::NotAsked => format!("{basis} asks no escape opening of {room}"),
            RoomVerdict::HasOne => {
                let names: Vec<String> = self
                    .qualifying()
                    .map(|answer| format!("`{}`", answer.name))
                    .collect();
                format!(
                    "{room} has at least one opening with what {} asks: {}; check with the local code",
                    self.edition,
                    names.join(", ")
                )
            }
            RoomVerdict::NoneOfThoseGiven => format!(
                "none of the openings given of {room} has what {basis} asks for escape; another opening or a door to the outside may"
            ),
            RoomVerdict::NoOpeningsGiven => {
                format!("{basis} asks an escape opening of {room}, and no opening of it was given")
            }
            RoomVerdict::Undecided => format!(
                "whether {room} has an escape opening by {} cannot be decided; missing: {}",
                self.edition,
                listed(&self.missing)
            ),
        }
    }
}

impl RoomUse {
    /// Returns the words for it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Sleeping => "a sleeping room",
            Self::Basement => "a basement with habitable space",
            Self::HabitableAttic => "a habitable attic",
            Self::BelowSleepingLoft => "a room that a sleeping loft opens to",
            Self::Other => "a room where nobody sleeps, neither basement nor attic",
        }
    }
}

impl fmt::Display for Shortfall {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let what = self.requirement.words();
        match &self.amount {
            Some(amount) => write!(formatter, "{what} is {}", amount.words(self.requirement))?,
            None => formatter.write_str(what)?,
        }
        write!(formatter, " ({})", self.basis)
    }
}

impl Amount {
    fn words(&self, requirement: Requirement) -> String {
        let shown = |interval: &Interval| span(interval, requirement.is_area());
        let limit = shown(&Interval::exact(self.limit.clone()));
        let (found, by) = (shown(&self.found), shown(&self.by));
        if requirement == Requirement::Bottom {
            format!("{found} above the floor, {by} more than {limit}")
        } else {
            format!("{found}, {by} less than {limit}")
        }
    }
}

fn span(interval: &Interval, is_area: bool) -> String {
    let shown = |number: &Number| {
        if is_area {
            format_area(number, AreaUnit::SquareFoot)
        } else {
            format_length(number, LengthUnit::Inch)
        }
    };
    if interval.low() == interval.high() {
        shown(interval.low())
    } else {
        format!("{} to {}", shown(interval.low()), shown(interval.high()))
    }
}

impl Requirement {
    fn is_area(self) -> bool {
        matches!(self, Self::Area | Self::WellArea)
    }

    /// Returns what it is about, or for what is no matter of size what is lacking.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Area => "clear area",
            Self::Width => "clear width",
            Self::Height => "clear height",
            Self::Bottom => "bottom of the clear opening",
            Self::WithoutKeys => "it takes a key, a tool or special effort to open",
            Self::Device => "its device keeps it from opening and does not let go",
            Self::Reach => {
                "it is more than 20 ft above the ground, without rescue apparatus or a balcony to reach it"
            }
            Self::WellArea => "horizontal area of the window well",
            Self::WellProjection => "projection of the window well",
            Self::WellWidth => "width of the window well",
            Self::WellLadder => "the window well is deeper than 44 in and has no ladder or steps",
        }
    }
}

impl Excuse {
    /// Returns it as a sentence; `None` when nothing was asked.
    #[must_use]
    pub fn sentence(&self) -> Option<String> {
        match self {
            Self::NotAsked => None,
            Self::NotInEdition => Some("no exception for replacements is known in this code".to_owned()),
            Self::MayBeExcused { basis, scope } => Some(format!(
                "as a replacement its size may be excused by {basis}; ask the building official ({})",
                scope.words()
            )),
            Self::NotExcused(conditions) => {
                let words: Vec<&str> = conditions.iter().map(|condition| condition.words()).collect();
                Some(format!("not excused as a replacement: {}", words.join("; ")))
            }
            Self::Undecided(missing) => Some(format!(
                "whether it may be excused as a replacement cannot be decided; missing: {}",
                listed(missing)
            )),
        }
    }
}

impl Scope {
    /// Returns the words for it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::SillAndListedSections => {
                "the text of 2015, read for this edition, names the height of the sill and single sections"
            }
            Self::WholeSection => "the whole section on sizes",
            Self::NotSeen => "the text of this edition was not seen",
        }
    }
}

impl Condition {
    /// Returns what is not met.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::LargestStandardSize => "it is not the largest standard size that fits",
            Self::SameOperationOrNoLess => {
                "it opens otherwise than the existing window, and gives a smaller opening"
            }
            Self::NoChangeOfOccupancy => "it is part of a change of occupancy",
            Self::OnlySizes => "what it lacks is more than its size",
            Self::Opens => "it does not open",
        }
    }
}

impl Remark {
    /// Returns it as a sentence.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::GradeFloor => {
                "counts with 5 sq ft as a grade-floor opening: its sill is at most 44 in above or below the adjacent ground"
            }
            Self::BelowGrade => "counts with 5 sq ft, since it lies below the adjacent ground",
            Self::WellNotKnown => {
                "where it lies below the ground: what this code asks of a window well is not known here"
            }
            Self::VentLatch => {
                "a vent latch has no standing; the sizes count with it folded back by hand: have it looked at"
            }
            Self::AfterRelease => {
                "the sizes count after the device has let go, by hand, without keys or tools"
            }
        }
    }
}

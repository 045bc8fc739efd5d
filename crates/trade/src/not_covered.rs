//! What this crate does not answer, said where it may matter.
//!
//! A house in a windborne-debris region needs glazing that nothing here judges; a house of which that is not known, in a state that
//! has such regions, may.
//!
//! Always holds: what is not known is said as well, unless the caller knows that the region has no such thing. No value of any of
//! these is known here, no threshold of altitude among them.
//! Source: none; these are gaps.

use std::fmt;

/// Something that is not covered here.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Topic {
    /// Impact-resistant glazing and windborne debris.
    WindborneDebris,
    /// Wildfire zones.
    Wildfire,
    /// High altitude: breather tubes, gas fills (recalled, not read).
    HighAltitude,
    /// A sash that swings out over a path or deck.
    OutswingOverPath,
}

/// Whether a topic touches an opening.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Standing {
    /// It does.
    Applies,
    /// It does not.
    DoesNotApply,
    /// It is not known.
    NotKnown {
        /// Whether the region has such a thing at all; `None` when that is not known either.
        region_has_it: Option<bool>,
    },
}

/// What is known of each topic. Nothing, by default.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct Facts {
    /// Whether the house is in a windborne-debris region.
    pub windborne_debris: Standing,
    /// Whether it is in a wildfire zone.
    pub wildfire: Standing,
    /// Whether it lies at high altitude, by the maker's word.
    pub high_altitude: Standing,
    /// Whether the sash swings out over a path or deck.
    pub outswing_over_path: Standing,
}

/// Returns the topics that touch an opening or may, in the order of [`Topic`].
///
/// # Examples
/// ## A fact that is set, and one that is not known
/// ```
/// use astragal_trade::not_covered::{Facts, Standing, Topic, not_covered};
/// let facts = Facts {
///     windborne_debris: Standing::Applies,
///     wildfire: Standing::NotKnown { region_has_it: Some(true) },
///     high_altitude: Standing::NotKnown { region_has_it: Some(false) },
///     outswing_over_path: Standing::DoesNotApply,
/// };
/// let topics = not_covered(&facts);
/// assert_eq!(topics, [Topic::WindborneDebris, Topic::Wildfire]);
/// assert_eq!(topics[0].to_string(), "not covered here: impact-resistant glazing and windborne debris");
/// ```
/// ## Nothing known
/// ```
/// use astragal_trade::not_covered::{Facts, not_covered};
/// assert_eq!(not_covered(&Facts::default()).len(), 4);
/// ```
#[must_use]
pub fn not_covered(facts: &Facts) -> Vec<Topic> {
    [
        (Topic::WindborneDebris, facts.windborne_debris),
        (Topic::Wildfire, facts.wildfire),
        (Topic::HighAltitude, facts.high_altitude),
        (Topic::OutswingOverPath, facts.outswing_over_path),
    ]
    .into_iter()
    .filter(|(_, standing)| standing.may_matter())
    .map(|(topic, _)| topic)
    .collect()
}

impl Standing {
    fn may_matter(self) -> bool {
        match self {
            Self::Applies => true,
            Self::DoesNotApply => false,
            Self::NotKnown { region_has_it } => region_has_it != Some(false),
        }
    }
}

impl Default for Standing {
    /// Nothing is known.
    fn default() -> Self {
        Self::NotKnown { region_has_it: None }
    }
}

impl Default for Facts {
    /// Nothing is known of any.
    fn default() -> Self {
        Self {
            windborne_debris: Standing::default(),
            wildfire: Standing::default(),
            high_altitude: Standing::default(),
            outswing_over_path: Standing::default(),
        }
    }
}

impl Topic {
    /// Every topic, in order.
    pub const ALL: [Topic; 4] = [
        Topic::WindborneDebris,
        Topic::Wildfire,
        Topic::HighAltitude,
        Topic::OutswingOverPath,
    ];

    /// Returns what is not covered.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::WindborneDebris => "impact-resistant glazing and windborne debris",
            Self::Wildfire => "glazing in wildfire zones",
            Self::HighAltitude => {
                "high altitude, where insulating glass may need breather tubes or other gas fills"
            }
            Self::OutswingOverPath => "a sash that swings out over a path or deck",
        }
    }
}

impl fmt::Display for Topic {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "not covered here: {}", self.words())
    }
}

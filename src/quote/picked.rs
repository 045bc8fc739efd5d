//! The picks of a unit as the engine takes them.
//!
//! Always holds: of two picks of one attribute the later stands, as it does when standards are filled in.

use std::collections::BTreeMap;

use astragal_core::options::Picked;
use astragal_model::{AttributeIndex, Catalog, Date, Judgement, Pick, RuleName, Standing};

/// Picks, and the dates of the quotes from which some were carried over.
pub(crate) struct Picks {
    pub(crate) picks: Vec<Picked>,
    pub(crate) quoted: BTreeMap<AttributeIndex, Date>,
}

impl Picks {
    /// `judgement` is of these picks, filled with standards: it says which are honoured although they are no longer offered. Without
    /// it none is. Picks of `pins` never change.
    pub(crate) fn new(
        catalog: &Catalog,
        picks: &[Pick],
        pins: &[AttributeIndex],
        judgement: Option<&Judgement>,
    ) -> Self {
        let mut made = Self {
            picks: Vec::new(),
            quoted: BTreeMap::new(),
        };
        for pick in picks {
            let attribute = pick.attribute;
            let options = &catalog.declarations().attributes.at(attribute).options;
            let Some(value) = options.iter().position(|option| option.id == pick.option) else {
                continue;
            };
            made.picks.retain(|earlier| earlier.attribute != attribute);
            made.quoted.remove(&attribute);
            made.quoted.extend(pick.quoted.map(|date| (attribute, date)));
            made.picks.push(Picked {
                attribute,
                value,
                pinned: pins.contains(&attribute),
                honoured: judgement.is_some_and(|judgement| is_honoured(judgement, attribute)),
            });
        }
        made
    }

    /// The same with every pin loosened; nothing where nothing is pinned.
    pub(crate) fn without_pins(&self) -> Option<Self> {
        if !self.picks.iter().any(|pick| pick.pinned) {
            return None;
        }
        let loosened = |pick: &Picked| Picked {
            pinned: false,
            ..*pick
        };
        Some(Self {
            picks: self.picks.iter().map(loosened).collect(),
            quoted: self.quoted.clone(),
        })
    }
}

/// Whether the judge lets an option stand that is no longer offered, since it was quoted in time.
fn is_honoured(judgement: &Judgement, attribute: AttributeIndex) -> bool {
    let mut findings = judgement.rules.iter();
    findings
        .any(|finding| finding.rule == RuleName::Offered(attribute) && finding.standing == Standing::Warns)
}

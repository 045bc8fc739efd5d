//! Picks of a small catalog, by its case and by dice.

use std::collections::BTreeMap;

use astragal_core::options::Picked;
use astragal_model::{AttributeIndex, Date, Origin, Pick, RuleName, Setting, Standing, fill, judge};
use astragal_oracle::generate::Case;

/// Picks, and the dates of the quotes from which some are.
pub(crate) struct Selection {
    pub(crate) picks: Vec<Picked>,
    pub(crate) quoted: BTreeMap<AttributeIndex, Date>,
}

/// The picks of a case, and elsewhere options that are no longer offered, quoted on the last day.
pub(crate) fn case_picks(setting: &Setting<'_>, case: &Case) -> Vec<Pick> {
    let mut picks = case.picks.clone();
    for (attribute, entry) in setting.catalog.declarations().attributes.iter() {
        let gone = entry.options.iter().find(|one| {
            let until = one.validity.offered_until;
            until.is_some_and(|until| until < setting.date)
                && one.validity.honoured_until >= Some(setting.date)
        });
        if let Some(gone) = gone.filter(|_| picks.iter().all(|pick| pick.attribute != attribute)) {
            picks.push(Pick {
                attribute,
                option: gone.id.clone(),
                quoted: gone.validity.offered_until,
            });
        }
    }
    picks
}

impl Selection {
    /// Of two picks of one attribute the later; in later rounds more picks by dice, and pins.
    pub(crate) fn new(setting: &Setting<'_>, picks: &[Pick], dice: u64) -> Self {
        let stands = judge(setting, &fill(setting, picks));
        let is_honoured = |attribute| {
            let mut findings = stands.rules.iter();
            findings.any(|one| one.rule == RuleName::Offered(attribute) && one.standing == Standing::Warns)
        };
        let mut selection = Self {
            picks: Vec::new(),
            quoted: BTreeMap::new(),
        };
        for (index, attribute) in setting.catalog.declarations().attributes.iter() {
            let dice = (dice + index.0 as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15) >> 40;
            let dice = dice as usize;
            let pick = picks.iter().rfind(|pick| pick.attribute == index);
            let named = pick.and_then(|pick| attribute.options.iter().position(|one| one.id == pick.option));
            let by_dice = dice
                .is_multiple_of(3)
                .then_some(dice / 3 % attribute.options.len().max(1));
            let Some(value) = named.or(by_dice) else { continue };
            if let Some(date) = pick.filter(|_| named.is_some()).and_then(|pick| pick.quoted) {
                selection.quoted.insert(index, date);
            }
            selection.picks.push(Picked {
                attribute: index,
                value,
                pinned: (dice / 64).is_multiple_of(4),
                honoured: named.is_some() && is_honoured(index),
            });
        }
        selection
    }

    pub(crate) fn origin(&self, attribute: usize, value: usize) -> Origin {
        if self.is_kept(attribute, value) {
            let quoted = self.quoted.get(&AttributeIndex(attribute)).copied();
            Origin::Picked { quoted }
        } else {
            Origin::Standard
        }
    }

    pub(crate) fn has(&self, attribute: AttributeIndex) -> bool {
        self.picks.iter().any(|pick| pick.attribute == attribute)
    }

    pub(crate) fn is_kept(&self, attribute: usize, value: usize) -> bool {
        let kept = |pick: &Picked| pick.attribute.0 == attribute && pick.value == value;
        self.picks.iter().any(kept)
    }

    /// The picks as `fill` takes them.
    pub(crate) fn as_picks(&self, setting: &Setting<'_>) -> Vec<Pick> {
        let pick = |pick: &Picked| Pick {
            attribute: pick.attribute,
            option: setting
                .catalog
                .declarations()
                .attributes
                .at(pick.attribute)
                .options[pick.value]
                .id
                .clone(),
            quoted: self.quoted.get(&pick.attribute).copied(),
        };
        self.picks.iter().map(pick).collect()
    }

    pub(crate) fn changes(&self, values: &[usize]) -> i64 {
        let changed = |pick: &&Picked| values[pick.attribute.0] != pick.value;
        self.picks.iter().filter(changed).count() as i64
    }

    pub(crate) fn keeps_pins(&self, values: &[usize]) -> bool {
        let mut pins = self.picks.iter().filter(|pick| pick.pinned);
        pins.all(|pick| values[pick.attribute.0] == pick.value)
    }
}

//! The way out where nothing holds with the picks as they are: the picks that the nearest unit that holds changes.
//!
//! Nearest is what changes the fewest picks, and of those units the one that departs least from the standards. With a fixed unit and
//! a full screen picked it has, say, no screen instead of the full one.
//!
//! Always holds: there are as many changed picks as must change at least.

use astragal_core::complete::Completed;
use astragal_core::options::Picked;
use astragal_model::{
    AttributeIndex, Catalog, Choice, Id, Origin, Outcome, Pick, Setting, Unit, Value, fill, slots,
};

use crate::quote::asking::{Asking, Best};

/// The unit that changes the fewest picks.
pub(crate) struct Nearest {
    pub(crate) changed: Vec<ChangedPick>,
    /// It holds only if what is not known turns out well.
    pub(crate) depends: bool,
}

/// A pick that is changed.
pub(crate) struct ChangedPick {
    pub(crate) attribute: AttributeIndex,
    pub(crate) from: Id,
    /// Nothing where the attribute is no longer asked.
    pub(crate) to: Option<Id>,
}

impl Nearest {
    pub(crate) fn new(asking: &Asking<'_>, best: &Best) -> Self {
        Self {
            changed: changed(asking.setting.catalog, &asking.picks.picks, &best.completed),
            depends: best.depends,
        }
    }
}

/// The picks that a completed unit changes, in their order.
pub(crate) fn changed(catalog: &Catalog, picks: &[Picked], completed: &Completed) -> Vec<ChangedPick> {
    let attributes = &catalog.declarations().attributes;
    let changed = picks.iter().filter_map(|pick| {
        let options = &attributes.at(pick.attribute).options;
        let to = *completed.values.get(pick.attribute.0)?;
        (to != pick.value).then_some(())?;
        Some(ChangedPick {
            attribute: pick.attribute,
            from: options.get(pick.value)?.id.clone(),
            to: options.get(to).map(|option| option.id.clone()),
        })
    });
    changed.collect()
}

/// The picks as they are, beside them what `nearest` fills in other than its standard, and standards for the rest.
pub(crate) fn filled_as(asking: &Asking<'_>, nearest: &Unit) -> Unit {
    let own = &asking.request.picks;
    let filled_in = nearest.choices.iter().filter_map(|(attribute, choice)| {
        let is_own = own.iter().any(|pick| pick.attribute == attribute);
        match choice {
            Choice::Chosen {
                option,
                origin: Origin::Completed,
            } if !is_own => Some(Pick {
                attribute,
                option: option.clone(),
                quoted: None,
            }),
            _ => None,
        }
    });
    let filled_in: Vec<Pick> = filled_in.collect();
    let picks = [own.as_slice(), &filled_in].concat();
    let mut unit = fill(asking.setting, &picks);
    name_origins(asking.setting, &mut unit, &filled_in);
    unit
}

/// Says of what was filled in that nobody picked it.
fn name_origins(setting: &Setting<'_>, unit: &mut Unit, filled_in: &[Pick]) {
    let slots = slots(setting, unit);
    for Pick {
        attribute, option, ..
    } in filled_in
    {
        let is_standard = matches!(
            &slots.at(*attribute).standard,
            Outcome::Known(Value::Option(standard)) if standard == option
        );
        let origin = if is_standard {
            Origin::Standard
        } else {
            Origin::Completed
        };
        let option = option.clone();
        unit.choices.put(*attribute, Choice::Chosen { option, origin });
    }
}

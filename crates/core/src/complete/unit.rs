//! Makes a unit of values: what was picked and kept, what is standard, what was filled in beside the standard, what stays open.

use astragal_model::{
    AttributeIndex, Choice, Indexed, Origin, Outcome, Setting, Slot, Standard, Unit, Value, slots,
};

use crate::complete::Wish;
use crate::rank::Aim;

/// The whole unit of these values, and how many attributes depart from their standard, kept picks left out.
pub(super) fn whole(wish: &Wish<'_>, values: &[usize]) -> (Unit, i64) {
    let attributes = wish.setting.catalog.declarations().attributes.iter();
    let choice = |((index, attribute), value): ((AttributeIndex, &astragal_model::Attribute), &usize)| {
        let Some(option) = attribute.options.get(*value) else {
            return Choice::NotAsked;
        };
        let kept = wish.pick(index).is_some_and(|pick| pick.value == *value);
        Choice::Chosen {
            option: option.id.clone(),
            origin: if kept {
                Origin::Picked {
                    quoted: wish.quoted.get(&index).copied(),
                }
            } else {
                Origin::Completed
            },
        }
    };
    let choices = attributes.zip(values).map(choice).collect();
    let mut unit = Unit { choices };
    let departures = name_standards(wish.setting, &mut unit);
    (unit, departures)
}

/// Says of what is filled in whether it is standard, and counts what departs from a standard that is known.
fn name_standards(setting: &Setting<'_>, unit: &mut Unit) -> i64 {
    let slots = slots(setting, unit);
    let mut departures = 0;
    for (attribute, slot) in slots.iter() {
        let Some(Choice::Chosen {
            option,
            origin: Origin::Completed,
        }) = unit.choices.get(attribute)
        else {
            continue;
        };
        let Outcome::Known(Value::Option(standard)) = &slot.standard else {
            continue;
        };
        if standard == option {
            let standard = Choice::Chosen {
                option: standard.clone(),
                origin: Origin::Standard,
            };
            unit.choices.put(attribute, standard);
        } else {
            departures += 1;
        }
    }
    departures
}

/// The unit with that opened which nobody may fill in: attributes whose standard is `ask`, those of which it is not known
/// whether they are asked once something is open, and with the standard as the aim all that have no standard beside what is left.
pub(super) fn with_open(wish: &Wish<'_>, whole: &Unit) -> Unit {
    let mut unit = whole.clone();
    loop {
        let slots = slots(wish.setting, &unit);
        let to_open: Vec<AttributeIndex> = unit
            .choices
            .iter()
            .filter(|(attribute, choice)| is_to_be_opened(wish, &slots, *attribute, choice))
            .map(|(attribute, _)| attribute)
            .collect();
        if to_open.is_empty() {
            return unit;
        }
        for attribute in to_open {
            unit.choices.put(attribute, Choice::Open);
        }
    }
}

fn is_to_be_opened(
    wish: &Wish<'_>,
    slots: &Indexed<AttributeIndex, Slot>,
    attribute: AttributeIndex,
    choice: &Choice,
) -> bool {
    let slot = slots.at(attribute);
    match choice {
        Choice::Open
        | Choice::Chosen {
            origin: Origin::Picked { .. },
            ..
        } => false,
        Choice::NotAsked => slot.asked.wants().is_some(),
        Choice::Chosen { .. } => {
            let has_none = !matches!(slot.standard, Outcome::Known(Value::Option(_)));
            // On a later part as well: that follows the first, which may be open, or there and not asked. Where it is not known
            // whether the first is there, what comes to be known may bring back `ask`.
            let asks = matches!(wish.setting.standard(attribute), Standard::Ask);
            slot.asked.wants().is_some() || ((asks || wish.aim == Aim::Standard) && has_none)
        }
    }
}

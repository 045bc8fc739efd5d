//! Random cases: sites with gaps, picks, waivers, authorities left out, days, and units changed by chance.

use astragal_model::{
    Attribute, Authorities, Choice, DeductedBy, Id, Indexed, Measured, Origin, Pick, Site, Unit, Waiver,
};

use crate::chance::Chance;
use crate::generate::values::{day, maybe_day, value, word};
use crate::generate::{Case, World};

/// A case of a world.
pub(crate) fn case(chance: &mut Chance, world: &World) -> Case {
    let declared = world.catalog.declarations();
    let gaps = chance.one_of(&[0, 15, 40]).copied().unwrap_or(0);
    let measures = declared.measures.values().map(|measure| {
        let deducted = [DeductedBy::Nobody, DeductedBy::Dealer, DeductedBy::Customer];
        (!chance.percent(gaps)).then(|| Measured {
            value: value(chance, measure.value_type),
            deducted_by: if chance.percent(gaps + 10) {
                None
            } else {
                chance.one_of(&deducted).copied()
            },
        })
    });
    let measures = measures.collect();
    let facts = declared
        .facts
        .values()
        .map(|fact| (!chance.percent(gaps)).then(|| value(chance, fact.value_type)));
    let facts = facts.collect();
    let mut picks = Vec::new();
    for (attribute, entry) in declared.attributes.iter() {
        while chance.percent(35) {
            picks.push(Pick {
                attribute,
                option: option(chance, entry),
                quoted: maybe_day(chance, 40),
            });
        }
    }
    chance.shuffle(&mut picks);
    let left_out = ["plant", "code", "programme", "dealer", "city", "nobody"]
        .into_iter()
        .filter(|_| chance.percent(6));
    let left_out = left_out.map(Id::new).collect();
    Case {
        site: Site {
            measures,
            facts,
            ..Site::default()
        },
        picks,
        wild: chance.percent(40),
        waivers: waivers(chance, world),
        authorities: Authorities { left_out },
        date: day(chance),
    }
}

fn waivers(chance: &mut Chance, world: &World) -> Vec<Waiver> {
    let of_policy = world.policy.iter().flat_map(|policy| &policy.terms.rules);
    let rules = world.catalog.declarations().rules.iter().chain(of_policy);
    let ids: Vec<Id> = rules.map(|rule| rule.id.clone()).collect();
    let mut waivers = Vec::new();
    while chance.percent(40) {
        if let Some(rule) = chance.one_of(&ids).cloned() {
            let until = maybe_day(chance, 40);
            waivers.push(Waiver {
                rule,
                reference: "letter".to_owned(),
                from: day(chance),
                until,
            });
        }
    }
    waivers
}

/// Mostly an option that the attribute has.
fn option(chance: &mut Chance, attribute: &Attribute) -> Id {
    if chance.percent(95)
        && let Some(entry) = chance.one_of(&attribute.options)
    {
        return entry.id.clone();
    }
    word(chance)
}

/// A unit with some of its choices replaced by anything, or of another length.
pub(crate) fn changed(chance: &mut Chance, world: &World, unit: &Unit) -> Unit {
    let declared = world.catalog.declarations();
    let percent = chance.one_of(&[10, 30, 100]).copied().unwrap_or(30);
    let choices = unit.choices.iter().map(|(attribute, choice)| {
        if !chance.percent(percent) {
            return choice.clone();
        }
        let Some(entry) = declared.attributes.get(attribute) else {
            return Choice::Open;
        };
        match chance.below(5) {
            0 => Choice::Open,
            1 => Choice::NotAsked,
            2 => Choice::Chosen {
                option: option(chance, entry),
                origin: Origin::Standard,
            },
            _ => {
                let origin = Origin::Picked {
                    quoted: maybe_day(chance, 40),
                };
                Choice::Chosen {
                    option: option(chance, entry),
                    origin,
                }
            }
        }
    });
    let mut choices: Vec<Choice> = choices.collect();
    if chance.percent(4) {
        choices.pop();
    }
    if chance.percent(4) {
        choices.push(Choice::picked("oak"));
    }
    Unit {
        choices: Indexed::from(choices),
    }
}

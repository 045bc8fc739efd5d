//! Fills what was not picked with standards, in the order of what depends on what.
//!
//! An attribute is asked when its `applies_when` is true. A pick stands whatever the condition says (the judge
//! reports it). Without a pick: not asked when the condition is false; open when it is unknown; otherwise the
//! standard, which on a later part is what stands at the first existing part. A source that is open, unknown or not
//! asked leaves the target open, and so does `ask`. Nothing is searched for: a standard that does not go with a pick
//! is filled in all the same, and reported.
//!
//! Cost: every `applies_when`, standard and figure is evaluated once.

use crate::attribute::Standard;
use crate::evaluate::Environment;
use crate::id::{AttributeIndex, Id, Indexed};
use crate::plan::{Step, parts_before};
use crate::rule::Definition;
use crate::setting::Setting;
use crate::unit::{Choice, Origin, Pick, Unit};
use crate::value::{Outcome, Value, Want, Wants};

/// Completes picks with standards.
///
/// The unit has one choice an attribute, in catalog order. When an attribute is picked twice, the later pick stands.
/// What stays open is what [`judge`](crate::judge()) lists as open, with what it waits for.
#[must_use]
pub fn fill(setting: &Setting<'_>, picks: &[Pick]) -> Unit {
    let mut choices: Indexed<AttributeIndex, Choice> = setting
        .catalog
        .declarations()
        .attributes
        .values()
        .map(|_| Choice::Open)
        .collect();
    for pick in picks {
        if choices.get(pick.attribute).is_some() {
            choices.put(
                pick.attribute,
                Choice::Chosen {
                    option: pick.option.clone(),
                    origin: Origin::Picked { quoted: pick.quoted },
                },
            );
        }
    }
    settle(setting, Unit { choices }, Mode::Fill).unit
}

/// What a unit would be with standards alone.
///
/// Attributes whose standard is `ask` have no standard, so that they keep what stands there (on a later part only while
/// no earlier part is asked, since its standard is theirs); everything else is dropped and filled again. The judge compares with this unit to tell what is an upcharge.
#[must_use]
pub fn fill_standards(setting: &Setting<'_>, unit: &Unit) -> Unit {
    let attributes = setting.catalog.declarations().attributes.positions();
    let choices = attributes.map(|attribute| match unit.choices.get(attribute) {
        Some(choice @ Choice::Chosen { .. }) if has_no_standard(setting, unit, attribute) => choice.clone(),
        _ => Choice::Open,
    });
    let choices = choices.collect();
    settle(setting, Unit { choices }, Mode::Fill).unit
}

/// What the choices of a unit leave to say of one attribute.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Slot {
    /// Whether it is asked: what its `applies_when` comes to, true without one.
    pub asked: Outcome,
    /// What its standard comes to, its own choice left aside: an option; *not asked* or unknown where what it follows is;
    /// undefined where its formula has no value. `ask` comes to wanting the choice itself.
    pub standard: Outcome,
}

/// Whether every attribute is asked, and what its standard comes to, beside the choices of a unit.
///
/// Cost: as [`fill`].
#[must_use]
pub fn slots(setting: &Setting<'_>, unit: &Unit) -> Indexed<AttributeIndex, Slot> {
    let environment = settle(setting, unit.clone(), Mode::Keep);
    let slot = |attribute| Slot {
        asked: environment.asked.at(attribute).clone(),
        standard: standard_outcome(setting, &environment, attribute),
    };
    setting
        .catalog
        .declarations()
        .attributes
        .positions()
        .map(slot)
        .collect()
}

/// Whether somebody must choose: the standard is `ask`, and no earlier part is asked whose choice would be the standard.
fn has_no_standard(setting: &Setting<'_>, unit: &Unit, attribute: AttributeIndex) -> bool {
    let earlier = parts_before(setting.catalog.declarations(), attribute);
    let first = earlier
        .iter()
        .all(|(_, before)| unit.choices.get(*before) == Some(&Choice::NotAsked));
    first && matches!(setting.standard(attribute), Standard::Ask)
}

/// Whether open attributes are filled on the way.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Mode {
    /// Open attributes are filled.
    Fill,
    /// The unit stays as it is; only conditions and figures are worked out.
    Keep,
}

/// Carries the plan out: decides what is asked, fills if told to, and works figures out.
pub(crate) fn settle<'a>(setting: &Setting<'a>, unit: Unit, mode: Mode) -> Environment<'a> {
    let declarations = setting.catalog.declarations();
    // A unit of another length was made for another catalog; what is missing is open, what is too much is dropped.
    let choices = declarations.attributes.positions();
    let choices = choices
        .map(|attribute| unit.choices.get(attribute).cloned().unwrap_or(Choice::Open))
        .collect();
    let unit = Unit { choices };
    let mut environment = Environment {
        catalog: setting.catalog,
        declarations,
        site: setting.site,
        asked: unit.choices.values().map(|_| Outcome::truth(true)).collect(),
        open_wants: unit.choices.values().map(|_| Wants::new()).collect(),
        figures: declarations
            .figures
            .values()
            .map(|_| Outcome::truth(false))
            .collect(),
        unit,
    };
    for step in &setting.plan().steps {
        match *step {
            Step::Attribute(attribute) => settle_attribute(setting, &mut environment, attribute, mode),
            Step::Figure(figure) => {
                environment.figures.put(
                    figure,
                    match &declarations.figures.at(figure).definition {
                        Definition::Formula(formula) => environment.evaluate(formula),
                        Definition::Table(table, row_match) => environment.look_up(figure, table, *row_match),
                    },
                );
            }
        }
    }
    environment
}

fn settle_attribute(
    setting: &Setting<'_>,
    environment: &mut Environment<'_>,
    attribute: AttributeIndex,
    mode: Mode,
) {
    let asked = match &environment.declarations.attributes.at(attribute).applies_when {
        Some(condition) => environment.evaluate(condition),
        None => Outcome::truth(true),
    };
    environment.asked.put(attribute, asked.clone());
    if *environment.unit.choices.at(attribute) != Choice::Open {
        return;
    }
    let own = Wants::from([Want::Choice(attribute)]);
    let (choice, wants) = match asked {
        Outcome::Known(Value::Bool(true)) => match standard_outcome(setting, environment, attribute) {
            Outcome::Known(Value::Option(option)) => (
                Choice::Chosen {
                    option,
                    origin: Origin::Standard,
                },
                own,
            ),
            Outcome::Unknown(wants) => (Choice::Open, wants),
            _ => (Choice::Open, own),
        },
        Outcome::Known(Value::Bool(false)) => (Choice::NotAsked, own),
        Outcome::Unknown(wants) => (Choice::Open, wants),
        Outcome::Known(_) | Outcome::Undefined(_) => (Choice::Open, own),
    };
    environment.open_wants.put(attribute, wants);
    if mode == Mode::Fill {
        environment.unit.choices.put(attribute, choice);
    }
}

/// What the standard of an attribute comes to: an option, *not asked* where its source is, unknown or undefined.
///
/// `ask` comes to wanting the choice itself.
pub(crate) fn standard_outcome(
    setting: &Setting<'_>,
    environment: &Environment<'_>,
    attribute: AttributeIndex,
) -> Outcome {
    for (part, before) in parts_before(environment.declarations, attribute) {
        let exists = match &environment.declarations.parts.at(part).when {
            Some(condition) => environment.evaluate(condition),
            None => Outcome::truth(true),
        };
        match exists {
            Outcome::Known(Value::Bool(true)) => return source(environment, before),
            Outcome::Known(_) => {}
            Outcome::Unknown(wants) => return Outcome::Unknown(wants),
            Outcome::Undefined(cause) => return Outcome::Undefined(cause),
        }
    }
    match setting.standard(attribute) {
        Standard::Ask => Outcome::want(Want::Choice(attribute)),
        Standard::Option(option) => Outcome::Known(Value::Option(option.clone())),
        Standard::Formula(formula) => environment.evaluate(formula),
    }
}

fn source(environment: &Environment<'_>, attribute: AttributeIndex) -> Outcome {
    match environment.unit.choices.at(attribute) {
        Choice::Chosen { option, .. } => Outcome::Known(Value::Option(Id::clone(option))),
        Choice::NotAsked => Outcome::Known(Value::NotAsked),
        Choice::Open => Outcome::Unknown(environment.open_wants.at(attribute).clone()),
    }
}

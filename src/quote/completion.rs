//! Completes a unit: the standard completion where standards alone do not hold, and the cheapest beside it.
//!
//! Where standards alone hold they are the standard completion. Where they do not, the engine departs from as few of them as
//! can be, as long as no pick changes: picks that do not go together are not mended behind the customer's back. All the same what is
//! shown broken is only what a pick is to blame for: rules that other fill-ins mend are mended. What cannot be decided is not
//! worked around.
//!
//! Always holds: a unit of the engine has passed `judge`; every unit that is quoted has been judged as it is.
//! Cost: judging once or twice; at most three completions.

use std::collections::BTreeSet;

use astragal_core::complete::Aim;
use astragal_core::engine::Engine;
use astragal_core::prepare::Prepared;
use astragal_model::{
    AttributeIndex, Choice, Id, Judgement, Origin, Outcome, PartIndex, RuleFinding, RuleName, RuleState,
    Setting, Standing, Unit, UnitRequest, Value, Verdict, fill, judge, slots,
};

use crate::quote::asking::Asking;
use crate::quote::cheapest::{Cheapest, compare};
use crate::quote::nearest::{Nearest, filled_as};

/// A unit that is quoted, and how it was completed.
pub(crate) struct Quoted {
    pub(crate) unit: Unit,
    pub(crate) judgement: Judgement,
    pub(crate) completion: Completing,
}

/// How a unit was completed.
#[derive(Default)]
pub(crate) struct Completing {
    /// The rules that do not hold with standards alone and do as the unit is filled in, by id, with their messages; empty where
    /// nothing departs for their sake.
    pub(crate) because: Vec<(String, String)>,
    /// For each attribute that is filled in beside its standard, that standard.
    pub(crate) departures: Vec<(AttributeIndex, Id)>,
    /// How many picks must change at least, where nothing holds with all of them and something does that keeps the pins.
    pub(crate) least_changes: Option<i64>,
    /// Nothing holds that keeps the pins.
    pub(crate) is_impossible: bool,
    /// How many picks must change at least once the pins are loosened, where nothing holds with them and something does without.
    pub(crate) changes_without_pins: Option<i64>,
    /// What changes the fewest picks, where some must change; with pins loosened where nothing holds with them.
    pub(crate) nearest: Option<Nearest>,
    pub(crate) cheapest: Cheapest,
    /// What was filled in.
    pub(crate) filled_with: Aim,
    /// Why the engine was not asked.
    pub(crate) not_asked: Option<String>,
}

impl Quoted {
    /// The verdict of the judgement; *broken* too where nothing that is left to choose would hold.
    pub(crate) fn verdict(&self) -> Verdict {
        self.completion.verdict(&self.judgement)
    }
}

impl Completing {
    /// The verdict of a judgement; *broken* too where nothing that is left to choose would hold.
    pub(crate) fn verdict(&self, judgement: &Judgement) -> Verdict {
        if self.is_impossible || self.least_changes.is_some() {
            Verdict::Broken
        } else {
            judgement.verdict
        }
    }
}

/// Completes a unit, and compares it with the cheapest.
///
/// `engine` is the engine of its catalog or why there is none; `None` when only standards are filled in.
///
/// # Errors
/// When the engine and the judge disagree.
pub(crate) fn quoted(
    setting: &Setting<'_>,
    request: &UnitRequest,
    engine: Option<Result<&Engine, String>>,
    aim: Aim,
) -> Result<Quoted, String> {
    let mut quoted = filled(setting, request);
    let Some(engine) = engine else { return Ok(quoted) };
    let prepared = engine.and_then(|engine| {
        let prepared = engine.prepare(setting).map_err(|error| error.to_string())?;
        Ok((engine, prepared))
    });
    match prepared {
        Ok((engine, prepared)) => {
            let asking = Asking::new(engine, &prepared, setting, request, &quoted.judgement);
            keep_close(&mut quoted, &asking)?;
            let cheapest = compare(&mut quoted, &asking, aim)?;
            if matches!(cheapest, Cheapest::Quoted | Cheapest::Less(_)) {
                quoted.completion.filled_with = aim;
            }
            quoted.completion.cheapest = cheapest;
            quoted.completion.departures = departures(setting, &quoted.unit);
        }
        Err(reason) => quoted.completion.not_asked = Some(reason),
    }
    Ok(quoted)
}

/// Completes a unit with standards, in a setting that is prepared; the cheapest is not looked for.
///
/// # Errors
/// When the engine and the judge disagree.
pub(crate) fn standard(
    engine: &Engine,
    prepared: &Prepared,
    setting: &Setting<'_>,
    request: &UnitRequest,
) -> Result<Quoted, String> {
    let mut quoted = filled(setting, request);
    let asking = Asking::new(engine, prepared, setting, request, &quoted.judgement);
    keep_close(&mut quoted, &asking)?;
    quoted.completion.departures = departures(setting, &quoted.unit);
    Ok(quoted)
}

/// The unit with standards alone, judged.
fn filled(setting: &Setting<'_>, request: &UnitRequest) -> Quoted {
    let unit = fill(setting, &request.picks);
    Quoted {
        completion: Completing::default(),
        judgement: judge(setting, &unit),
        unit,
    }
}

/// Departs from the standards where they do not hold; finds the way out where nothing does that keeps the picks.
fn keep_close(quoted: &mut Quoted, asking: &Asking<'_>) -> Result<(), String> {
    match quoted.judgement.verdict {
        Verdict::Holds => return Ok(()),
        // Where something is still to choose, nothing is broken yet, and all the same nothing that could be chosen may hold.
        Verdict::Undecided if asking.may_hold() => return Ok(()),
        Verdict::Undecided | Verdict::Broken => {}
    }
    let with_pins = asking.best(Aim::Standard, None)?;
    let is_impossible = with_pins.is_none();
    quoted.completion.is_impossible = is_impossible;
    let best = match (with_pins, asking.without_pins()) {
        (None, Some(loosened)) => loosened.best(Aim::Standard, None)?,
        (best, _) => best,
    };
    let Some(best) = best else { return Ok(()) };
    let changes = best.completed.changes;
    if changes == 0 {
        take(quoted, best.completed.unit, best.completed.judgement);
        return Ok(());
    }
    let least = if is_impossible {
        &mut quoted.completion.changes_without_pins
    } else {
        &mut quoted.completion.least_changes
    };
    *least = Some(changes);
    quoted.completion.nearest = Some(Nearest::new(asking, &best));
    let unit = filled_as(asking, &best.completed.unit);
    let judgement = judge(asking.setting, &unit);
    if mends(&quoted.judgement, &judgement) {
        take(quoted, unit, judgement);
    }
    Ok(())
}

/// Quotes another unit with the same picks, and says for the sake of which rules.
fn take(quoted: &mut Quoted, unit: Unit, judgement: Judgement) {
    let after = names(&judgement);
    let mended = broken(&quoted.judgement).filter(|finding| !after.contains(&name(finding)));
    let mended = mended.map(|finding| (finding.id.to_string(), finding.message.clone()));
    quoted.completion.because = mended.collect();
    quoted.unit = unit;
    quoted.judgement = judgement;
}

/// Whether rules that were broken no longer are, and no other is.
fn mends(before: &Judgement, after: &Judgement) -> bool {
    let (before, after) = (names(before), names(after));
    after.is_subset(&before) && after != before
}

/// A rule and its part.
type Name = (RuleName, Option<PartIndex>);

fn name(finding: &RuleFinding) -> Name {
    (finding.rule, finding.part)
}

fn names(judgement: &Judgement) -> BTreeSet<Name> {
    broken(judgement).map(name).collect()
}

/// The rules that bind and are broken.
pub(crate) fn broken(judgement: &Judgement) -> impl Iterator<Item = &RuleFinding> {
    let rules = judgement.rules.iter();
    rules.filter(|finding| {
        finding.standing == Standing::Binds && !matches!(finding.state, RuleState::Undecided(_))
    })
}

/// What is filled in beside its standard, with that standard.
fn departures(setting: &Setting<'_>, unit: &Unit) -> Vec<(AttributeIndex, Id)> {
    let slots = slots(setting, unit);
    let departs =
        |(attribute, choice): (AttributeIndex, &Choice)| match (&slots.at(attribute).standard, choice) {
            (
                Outcome::Known(Value::Option(standard)),
                Choice::Chosen {
                    option,
                    origin: Origin::Completed,
                },
            ) if standard != option => Some((attribute, standard.clone())),
            _ => None,
        };
    unit.choices.iter().filter_map(departs).collect()
}

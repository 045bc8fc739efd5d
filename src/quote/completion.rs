//! Completes a unit: the standard completion where standards alone do not hold, and the cheapest beside it.
//!
//! Where standards alone hold they are the standard completion. Where they do not, the engine departs from as few of them as
//! can be, as long as no pick changes: picks that do not go together are not mended behind the customer's back. What
//! cannot be decided is not worked around.
//!
//! Always holds: a unit of the engine has passed `judge`.
//! Cost: judging once; at most two completions.

use astragal_core::complete::{Aim, Completed, Completion, Wish};
use astragal_core::engine::Engine;
use astragal_core::prepare::Prepared;
use astragal_model::{
    AttributeIndex, Choice, Id, Judgement, Money, Number, Outcome, RuleState, Setting, Standing, Total, Unit,
    UnitRequest, Value, Verdict, fill, judge, slots,
};

use crate::quote::picked::Picks;

/// A unit that is quoted, and how it was completed.
pub(crate) struct Quoted {
    pub(crate) unit: Unit,
    pub(crate) judgement: Judgement,
    pub(crate) completion: Completing,
}

/// How a unit was completed.
#[derive(Default)]
pub(crate) struct Completing {
    /// The rules that do not hold with standards alone, by id, with their messages; empty where nothing departs for their sake.
    pub(crate) because: Vec<(String, String)>,
    /// For each attribute that is filled in beside its standard, that standard.
    pub(crate) departures: Vec<(AttributeIndex, Id)>,
    /// How many picks must change at least, where nothing holds with all of them and something does without.
    pub(crate) least_changes: Option<i64>,
    /// Nothing holds, whatever is chosen.
    pub(crate) is_impossible: bool,
    pub(crate) cheapest: Cheapest,
    /// Why the engine was not asked.
    pub(crate) not_asked: Option<String>,
}

/// The cheapest unit with the same picks.
#[derive(Default)]
pub(crate) enum Cheapest {
    /// There is none, or it was not asked for.
    #[default]
    None,
    /// It depends on what is not known.
    Depends,
    /// The quoted unit costs no more.
    Quoted,
    /// Another unit costs less.
    Less(Box<Less>),
}

/// Two units with the same picks, of which one costs less.
pub(crate) struct Less {
    /// What the cheapest costs.
    pub(crate) cheapest: Money,
    /// How much more the other one costs.
    pub(crate) saves: Money,
    /// What the other unit has where they differ: with standards where the cheapest is quoted, the cheapest otherwise.
    pub(crate) instead: Vec<(AttributeIndex, Choice)>,
}

/// What is asked of the engine about one unit.
struct Asking<'a> {
    engine: &'a Engine,
    prepared: &'a Prepared,
    setting: &'a Setting<'a>,
    picks: Picks,
}

impl<'a> Asking<'a> {
    /// `quoted` is the unit with standards alone.
    fn new(
        engine: &'a Engine,
        prepared: &'a Prepared,
        setting: &'a Setting<'a>,
        request: &UnitRequest,
        quoted: &Quoted,
    ) -> Self {
        let judgement = Some(&quoted.judgement);
        Self {
            engine,
            prepared,
            setting,
            picks: Picks::new(setting.catalog, &request.picks, &request.pins, judgement),
        }
    }

    fn complete(&self, aim: Aim, near: Option<&Unit>) -> Result<Completion, String> {
        let wish = Wish {
            setting: self.setting,
            picks: &self.picks.picks,
            quoted: &self.picks.quoted,
            aim,
            near,
            count: 1,
        };
        let disagreement =
            |error| format!("catalog of revision {}: {error}", self.setting.catalog.revision());
        self.engine.complete(self.prepared, &wish).map_err(disagreement)
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
            let asking = Asking::new(engine, &prepared, setting, request, &quoted);
            keep_close(&mut quoted, &asking)?;
            make_cheap(&mut quoted, &asking, aim)?;
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
    let asking = Asking::new(engine, prepared, setting, request, &quoted);
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

/// Departs from the standards where they do not hold.
fn keep_close(quoted: &mut Quoted, asking: &Asking<'_>) -> Result<(), String> {
    if quoted.judgement.verdict != Verdict::Broken {
        return Ok(());
    }
    let completed = match asking.complete(Aim::Standard, None)? {
        Completion::Impossible => {
            quoted.completion.is_impossible = true;
            return Ok(());
        }
        Completion::Depends(completed) => *completed,
        Completion::Found(units) => {
            let Some(first) = units.into_iter().next() else {
                return Ok(());
            };
            first
        }
    };
    if completed.changes > 0 {
        quoted.completion.least_changes = Some(completed.changes);
        return Ok(());
    }
    quoted.completion.because = broken(&quoted.judgement);
    quoted.unit = completed.unit;
    quoted.judgement = completed.judgement;
    Ok(())
}

/// Compares with the cheapest completion, and takes it where that is the aim.
fn make_cheap(quoted: &mut Quoted, asking: &Asking<'_>, aim: Aim) -> Result<(), String> {
    if quoted.judgement.verdict == Verdict::Broken {
        return Ok(());
    }
    let (cheapest, depends): (Completed, bool) = match asking.complete(Aim::Cheapest, Some(&quoted.unit))? {
        Completion::Impossible => {
            quoted.completion.is_impossible = true;
            return Ok(());
        }
        Completion::Depends(unit) => (*unit, true),
        Completion::Found(units) => match units.into_iter().next() {
            Some(unit) => (unit, false),
            None => return Ok(()),
        },
    };
    // Where something is still to choose, nothing is broken yet, and all the same nothing that could be chosen may hold.
    if cheapest.changes > 0 {
        quoted.completion.least_changes = Some(cheapest.changes);
        return Ok(());
    }
    if depends {
        quoted.completion.cheapest = Cheapest::Depends;
        return Ok(());
    }
    let (Some(cheap), Some(dear)) = (total(&cheapest.judgement), total(&quoted.judgement)) else {
        return Ok(());
    };
    let saves = dear.plus(&cheap.times(&Number::from(-1)));
    let Some(saves) = saves.filter(|saves| !saves.amount().is_zero()) else {
        quoted.completion.cheapest = Cheapest::Quoted;
        return Ok(());
    };
    let cheap = cheap.clone();
    let takes = aim == Aim::Cheapest;
    let (here, there) = if takes {
        (&cheapest.unit, &quoted.unit)
    } else {
        (&quoted.unit, &cheapest.unit)
    };
    let instead = there
        .choices
        .iter()
        .filter(|(attribute, choice)| {
            here.choices.get(*attribute).and_then(Choice::option) != choice.option()
        })
        .map(|(attribute, choice)| (attribute, choice.clone()));
    quoted.completion.cheapest = Cheapest::Less(Box::new(Less {
        cheapest: cheap,
        saves,
        instead: instead.collect(),
    }));
    if takes {
        quoted.unit = cheapest.unit;
        quoted.judgement = cheapest.judgement;
    }
    Ok(())
}

fn total(judgement: &Judgement) -> Option<&Money> {
    match &judgement.total {
        Total::Known(total) => Some(total),
        Total::NotPriced | Total::Unknown(_) | Total::NoPrice => None,
    }
}

/// The rules that bind and are broken.
fn broken(judgement: &Judgement) -> Vec<(String, String)> {
    let rules = judgement.rules.iter();
    let broken = rules.filter(|finding| {
        finding.standing == Standing::Binds && !matches!(finding.state, RuleState::Undecided(_))
    });
    broken
        .map(|finding| (finding.id.to_string(), finding.message.clone()))
        .collect()
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
                    origin: astragal_model::Origin::Completed,
                },
            ) if standard != option => Some((attribute, standard.clone())),
            _ => None,
        };
    unit.choices.iter().filter_map(departs).collect()
}

//! Judges the rules over one room: at least one of its openings meets a condition.
//!
//! A bedroom with two windows, of which one is large enough to escape by, holds; the small one is no error.
//!
//! Always holds: units of several catalogs may stand in one room; a rule is one by its id. Where no unit meets a rule and the
//! catalog of one does not have it, it cannot be decided. Nothing is searched for: units are judged as they are.
//! Cost: linear in the expressions of the rules and units.

use crate::evaluate::Environment;
use crate::fill::{Mode, settle};
use crate::id::Id;
use crate::judge::find::{direct_reads, reads_of};
use crate::judge::report::Read;
use crate::rule::{Effect, RoomRule};
use crate::setting::Setting;
use crate::unit::Unit;
use crate::value::{Outcome, Value};

/// One unit of a room, in its setting.
#[derive(Clone, Copy, Debug)]
pub struct RoomUnit<'a> {
    /// What stands still around it.
    pub setting: &'a Setting<'a>,
    /// The unit.
    pub unit: &'a Unit,
}

/// A rule over a room that applies, or may apply.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct RoomFinding {
    /// The id of the rule.
    pub id: Id,
    /// What a person reads: what at least one opening is.
    pub label: String,
    /// On whose authority it stands.
    pub authority: Id,
    /// Whether the room holds.
    pub state: RoomState,
    /// What follows where it does not: it binds, it warns, somebody must sign, or its authority was not applied.
    pub standing: RoomStanding,
    /// The rule in its own words.
    pub message: String,
    /// Where it is published, as the catalog states it.
    pub basis: Option<String>,
    /// Whether the rule applies to the room; `None` where that is not known or has no value. What it waits for is said of each
    /// unit, by that unit's own catalog: [`RoomUnitFinding::applies`].
    pub applies: Option<bool>,
    /// How each unit meets the condition, in the order in which they were given; `None` where its catalog does not have the
    /// rule.
    pub units: Vec<Option<RoomUnitFinding>>,
}

/// How one unit meets the condition of a rule over its room.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct RoomUnitFinding {
    /// Whether the rule applies by what is known at this unit; what it wants is wanted by the unit's own catalog.
    pub applies: Outcome,
    /// Whether it meets it.
    pub meets: Outcome,
    /// What the condition reads, with what its figures read, and the values.
    pub reads: Vec<Read>,
}

/// How a rule over a room stands.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum RoomState {
    /// At least one unit meets it.
    Holds,
    /// None does as far as is known, and something is not known.
    Undecided,
    /// None does.
    Broken,
}

/// What follows from a rule over a room that does not hold, the strictest first. No waiver covers such a rule.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum RoomStanding {
    /// It binds.
    Binds,
    /// Somebody must sign before the room is ordered.
    SignOff,
    /// It warns.
    Warns,
    /// Its authority was not applied.
    NotApplied,
}

/// Judges the rules over a room for all its units. Rules that plainly do not apply are left out.
///
/// The order is that of the first catalog that declares the rule. Where catalogs give one id different effects, the strictest
/// counts, whatever the order of the units. `units` are those of one room; with none, nothing is asked.
#[must_use]
pub fn judge_room(units: &[RoomUnit<'_>]) -> Vec<RoomFinding> {
    let settled: Vec<Settled<'_>> = units
        .iter()
        .map(|one| Settled {
            setting: one.setting,
            environment: settle(one.setting, one.unit.clone(), Mode::Keep),
        })
        .collect();
    let mut findings: Vec<RoomFinding> = Vec::new();
    for one in &settled {
        for rule in &one.environment.declarations.room_rules {
            if !findings.iter().any(|finding| finding.id == rule.id) {
                findings.push(finding(rule, one, &settled));
            }
        }
    }
    findings.retain(|finding| finding.applies != Some(false));
    findings
}

/// A unit worked out in its setting.
struct Settled<'a> {
    setting: &'a Setting<'a>,
    environment: Environment<'a>,
}

/// What one unit's catalog says of a rule.
struct Asked {
    unit: RoomUnitFinding,
    standing: RoomStanding,
}

impl Settled<'_> {
    /// What the unit's catalog says; `None` where it does not have the rule.
    fn ask(&self, id: &Id) -> Option<Asked> {
        let environment = &self.environment;
        let mut rules = environment.declarations.room_rules.iter();
        let rule = rules.find(|rule| rule.id == *id)?;
        let always = || Outcome::truth(true);
        let applies = rule
            .when
            .as_ref()
            .map_or_else(always, |when| environment.evaluate(when));
        Some(Asked {
            unit: RoomUnitFinding {
                applies,
                meets: environment.evaluate(&rule.at_least_one),
                reads: reads_of(environment, &direct_reads(&rule.at_least_one)),
            },
            standing: standing(self.setting, rule),
        })
    }
}

fn finding(rule: &RoomRule, first: &Settled<'_>, settled: &[Settled<'_>]) -> RoomFinding {
    let asked: Vec<Option<Asked>> = settled.iter().map(|one| one.ask(&rule.id)).collect();
    let said = || asked.iter().flatten();
    let applies = Outcome::any(said().map(|asked| &asked.unit.applies));
    let meets = Outcome::any(said().map(|asked| &asked.unit.meets));
    let mut state = state(&Outcome::any([applies.clone().not(), meets]));
    // A unit that was not asked may be the one.
    if state == RoomState::Broken && asked.iter().any(Option::is_none) {
        state = RoomState::Undecided;
    }
    let standing = said().map(|asked| asked.standing).min();
    let applies = applies.known().map(|known| *known == Value::Bool(true));
    RoomFinding {
        id: rule.id.clone(),
        label: rule.label.clone(),
        authority: rule.authority.clone(),
        state,
        standing: standing.unwrap_or(RoomStanding::Binds),
        message: rule.message.fill(|piece| first.environment.show_piece(piece)),
        basis: rule.basis.clone(),
        applies,
        units: asked
            .into_iter()
            .map(|asked| asked.map(|asked| asked.unit))
            .collect(),
    }
}

fn state(outcome: &Outcome) -> RoomState {
    match outcome {
        Outcome::Known(Value::Bool(true)) => RoomState::Holds,
        Outcome::Unknown(_) => RoomState::Undecided,
        Outcome::Known(_) | Outcome::Undefined(_) => RoomState::Broken,
    }
}

fn standing(setting: &Setting<'_>, rule: &RoomRule) -> RoomStanding {
    if !setting.authorities.apply(&rule.authority) {
        return RoomStanding::NotApplied;
    }
    match rule.effect {
        Effect::Block => RoomStanding::Binds,
        Effect::Warn => RoomStanding::Warns,
        Effect::SignOff => RoomStanding::SignOff,
    }
}

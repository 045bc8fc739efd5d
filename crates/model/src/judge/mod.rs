//! Judges one unit the obvious way. This is the definition of what a catalog means, and the checker of every engine.
//!
//! Given a unit (an option, *not asked* or *open* for every attribute) in its [`Setting`], [`judge`](crate::judge()) evaluates every
//! rule, figure, price item and notice, one after the other, and says what follows.
//!
//! Always holds: the judge changes nothing and searches for nothing; the same unit in the same setting gives the
//! same judgement. It never sees a diagram.
//! Cost: linear in all expressions and table rows.

mod find;
mod notices;
mod offered;
mod prices;
mod report;
mod rooms;
mod rules;

pub use report::{
    FigureFinding, ItemFinding, ItemState, Judgement, NoticeFinding, OpenAttribute, PriceStep, Read,
    RuleFinding, RuleName, RuleState, Standing, TailFinding, Total, Verdict,
};

pub use rooms::{RoomFinding, RoomStanding, RoomState, RoomUnit, RoomUnitFinding, judge_room};

use std::collections::BTreeSet;

use crate::fill::{Mode, fill_standards, settle};
use crate::setting::Setting;
use crate::unit::{Choice, Unit};

/// Everything that follows from a unit in its setting.
///
/// # Examples
/// A unit of one attribute whose rule does not hold:
/// ```
/// use astragal_model::*;
/// # use jiff::civil::date;
/// let mut declarations = Declarations::empty("small");
/// let colour = declarations.attributes.push(Attribute {
///     id: "colour".into(),
///     part: None,
///     label: "Colour".into(),
///     section: None,
///     options: vec![OptionEntry::plain("white"), OptionEntry::plain("grey")],
///     applies_when: None,
///     standard: Standard::Option("white".into()),
///     audience: Audience::Customer,
/// });
/// declarations.rules.push(Rule {
///     id: "no-grey".into(),
///     part: None,
///     authority: "plant".into(),
///     effect: Effect::Block,
///     when: None,
///     requirement: Requirement::Expression(Expression::Not(Box::new(Expression::is_option(colour, "grey")))),
///     message: Template::text("Grey is not made."),
///     basis: None,
///     waivable: false,
/// });
/// let catalog = Catalog::new(declarations)?;
/// let (site, authorities) = (Site::default(), Authorities::default());
/// let setting = Setting {
///     catalog: &catalog, book: None, policy: None, site: &site, waivers: &[],
///     authorities: &authorities, date: date(2026, 11, 25),
/// };
/// let standard = judge(&setting, &fill(&setting, &[]));
/// assert_eq!(standard.verdict, Verdict::Holds);
/// let grey = Pick { attribute: colour, option: "grey".into(), quoted: None };
/// let broken = judge(&setting, &fill(&setting, &[grey]));
/// assert_eq!(broken.verdict, Verdict::Broken);
/// assert_eq!(broken.rules[0].message, "Grey is not made.");
/// # Ok::<(), CatalogError>(())
/// ```
#[must_use]
pub fn judge(setting: &Setting<'_>, unit: &Unit) -> Judgement {
    let environment = settle(setting, unit.clone(), Mode::Keep);
    let alone = settle(setting, fill_standards(setting, unit), Mode::Keep);
    let mut rules = offered::implicit_findings(setting, &environment);
    rules.extend(rules::declared_findings(setting, &environment));
    let priced = prices::price(setting, &environment, &alone);
    rules.extend(priced.findings);
    let open = open_attributes(&environment);
    let verdict = verdict(&rules, &open, &priced.total);
    Judgement {
        verdict,
        waivers_used: waivers_used(&rules),
        rules,
        figures: notices::figure_findings(&environment),
        items: priced.items,
        subtotal: priced.subtotal,
        tail: priced.tail,
        total: priced.total,
        notices: notices::notice_findings(&environment),
        open,
        authorities_not_applied: setting.authorities.left_out.iter().cloned().collect(),
    }
}

fn open_attributes(environment: &crate::evaluate::Environment<'_>) -> Vec<OpenAttribute> {
    let choices = environment.unit.choices.iter();
    choices
        .filter(|(_, choice)| **choice == Choice::Open)
        .map(|(attribute, _)| OpenAttribute {
            attribute,
            wants: environment.open_wants.at(attribute).clone(),
        })
        .collect()
}

fn waivers_used(rules: &[RuleFinding]) -> Vec<usize> {
    let used: BTreeSet<usize> = rules
        .iter()
        .filter_map(|finding| {
            if let Standing::Waived(waiver) = finding.standing {
                Some(waiver)
            } else {
                None
            }
        })
        .collect();
    used.into_iter().collect()
}

fn verdict(rules: &[RuleFinding], open: &[OpenAttribute], total: &Total) -> Verdict {
    let mut binding = rules.iter().filter(|finding| finding.standing == Standing::Binds);
    if binding
        .clone()
        .any(|finding| matches!(finding.state, RuleState::Broken | RuleState::NoRow(_)))
    {
        return Verdict::Broken;
    }
    let undecided = binding.any(|finding| matches!(finding.state, RuleState::Undecided(_)));
    if undecided || !open.is_empty() || matches!(total, Total::Unknown(_)) {
        return Verdict::Undecided;
    }
    Verdict::Holds
}

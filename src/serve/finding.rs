//! What a judgement says of a unit, as the contract has it: rules, wants, choices, figures, prices, notices.
//!
//! Nothing is worked out here: every field is read off the judgement.

use astragal_model::{
    Audience, Choice, FigureFinding, ItemFinding, ItemState, Judgement, NoticeFinding, NoticeKind, Origin,
    Outcome, RuleFinding, RuleState, Standing, Subject, Total, Unit, Value, Verdict, Waiver, Want, Wants,
};

use crate::quote::ask::UsedOn;
use crate::quote::words::item_name;
use crate::serve::google_type::Decimal;
use crate::serve::money::money;
use crate::serve::v1;
use crate::serve::{day, number};

pub(super) fn verdict(verdict: Verdict) -> v1::Verdict {
    match verdict {
        Verdict::Holds => v1::Verdict::Holds,
        Verdict::Undecided => v1::Verdict::Undecided,
        Verdict::Broken => v1::Verdict::Broken,
    }
}

pub(super) fn wants(on: UsedOn<'_>, wants: &Wants) -> Vec<v1::Want> {
    wants.iter().map(|one| want(on, one)).collect()
}

/// One thing that is wanted.
pub(super) fn want(on: UsedOn<'_>, want: &Want) -> v1::Want {
    let catalog = on.used.catalog;
    let (kind, id) = match want {
        Want::Measure(at) => (v1::WantKind::Measure, catalog.name_of(Subject::Measure(*at))),
        Want::DeductedBy(at) => (v1::WantKind::DeductedBy, catalog.name_of(Subject::Measure(*at))),
        Want::Fact(at) => (v1::WantKind::Fact, catalog.name_of(Subject::Fact(*at))),
        Want::Choice(at) => (v1::WantKind::Choice, catalog.name_of(Subject::Attribute(*at))),
        Want::SignOff(at) => (v1::WantKind::SignOff, item_name(catalog, *at)),
    };
    v1::Want {
        kind: kind.into(),
        id,
        label: catalog.show_want(want),
        ask: on.ask(want),
    }
}

/// Every rule that does not plainly hold. `unit` says what of it was picked; it was judged with the waivers.
pub(super) fn rules(
    on: UsedOn<'_>,
    unit: &Unit,
    judgement: &Judgement,
    waivers: &[Waiver],
) -> Vec<v1::RuleFinding> {
    let rules = judgement.rules.iter();
    rules.map(|finding| rule(on, unit, finding, waivers)).collect()
}

fn rule(on: UsedOn<'_>, unit: &Unit, finding: &RuleFinding, waivers: &[Waiver]) -> v1::RuleFinding {
    let catalog = on.used.catalog;
    let (state, wanted) = match &finding.state {
        RuleState::Broken => (v1::RuleState::Broken, Vec::new()),
        RuleState::NoRow(_) => (v1::RuleState::NoRow, Vec::new()),
        RuleState::Undecided(more) => (v1::RuleState::Undecided, wants(on, more)),
    };
    let (standing, waiver) = standing(finding.standing, waivers);
    let is_picked = |subject: Subject| match subject {
        Subject::Attribute(at) => unit.choices.at(at).is_picked(),
        _ => false,
    };
    let reads = finding.reads.iter().map(|read| v1::Reading {
        subject: catalog.name_of(read.subject),
        label: catalog.label_of(read.subject),
        text: catalog.show_outcome(read.subject, &read.outcome),
        picked: is_picked(read.subject),
    });
    let parts = &catalog.declarations().parts;
    let against = finding.standards_against_picks.iter();
    v1::RuleFinding {
        rule: finding.id.to_string(),
        part: finding
            .part
            .map(|part| parts.at(part).id.to_string())
            .unwrap_or_default(),
        authority: finding.authority.to_string(),
        basis: on.used.basis(finding).unwrap_or_default().to_owned(),
        state: state.into(),
        standing: standing.into(),
        waiver,
        message: finding.message.clone(),
        wants: wanted,
        reads: reads.collect(),
        standards_against_picks: against
            .map(|at| catalog.name_of(Subject::Attribute(*at)))
            .collect(),
    }
}

/// What follows, and where the waiver is written that releases from the rule.
fn standing(standing: Standing, waivers: &[Waiver]) -> (v1::Standing, String) {
    let plain = |standing| (standing, String::new());
    match standing {
        Standing::Binds => plain(v1::Standing::Binds),
        Standing::Warns => plain(v1::Standing::Warns),
        Standing::SignOff => plain(v1::Standing::SignOff),
        Standing::Waived(at) => {
            let waiver = waivers.get(at).map(|waiver| waiver.reference.clone());
            (v1::Standing::Waived, waiver.unwrap_or_default())
        }
        Standing::NotApplied => plain(v1::Standing::NotApplied),
    }
}

/// What stands at every attribute.
pub(super) fn choices(on: UsedOn<'_>, unit: &Unit) -> Vec<v1::Choice> {
    let catalog = on.used.catalog;
    let choice = |(at, choice): (_, &Choice)| {
        let declared = catalog.declarations().attributes.at(at);
        let state = match choice {
            Choice::Open => v1::ChoiceState::Open,
            Choice::NotAsked => v1::ChoiceState::NotAsked,
            Choice::Chosen { origin, .. } => match origin {
                Origin::Picked { .. } => v1::ChoiceState::Picked,
                Origin::Standard => v1::ChoiceState::Standard,
                Origin::Completed => v1::ChoiceState::Filled,
            },
        };
        let code = choice
            .option()
            .and_then(|id| declared.option(id)?.plant_code.clone());
        v1::Choice {
            attribute: catalog.name_of(Subject::Attribute(at)),
            state: state.into(),
            stands: stands(choice),
            plant_code: code.unwrap_or_default(),
            of_plant: declared.audience == Audience::Plant,
        }
    };
    unit.choices.iter().map(choice).collect()
}

fn stands(choice: &Choice) -> Option<v1::choice::Stands> {
    match choice {
        Choice::Open => None,
        Choice::NotAsked => Some(v1::choice::Stands::NotAsked(true)),
        Choice::Chosen { option, .. } => Some(v1::choice::Stands::Option(option.to_string())),
    }
}

/// What is still open.
pub(super) fn open(on: UsedOn<'_>, judgement: &Judgement) -> Vec<v1::OpenAttribute> {
    let catalog = on.used.catalog;
    let open = judgement.open.iter().map(|open| v1::OpenAttribute {
        attribute: catalog.name_of(Subject::Attribute(open.attribute)),
        to_choose: open.is_to_choose(catalog),
        wants: wants(on, &open.wants),
    });
    open.collect()
}

/// The figures that are shown.
pub(super) fn figures(on: UsedOn<'_>, judgement: &Judgement) -> Vec<v1::Figure> {
    let declared = &on.used.catalog.declarations().figures;
    let figures = judgement.figures.iter();
    let shown = figures.filter(|finding| declared.at(finding.figure).shown);
    shown.map(|finding| figure(on, finding)).collect()
}

fn figure(on: UsedOn<'_>, finding: &FigureFinding) -> v1::Figure {
    let catalog = on.used.catalog;
    let subject = Subject::Figure(finding.figure);
    let known = finding
        .outcome
        .known()
        .filter(|_| finding.part_exists.is_truth(true));
    v1::Figure {
        id: catalog.name_of(subject),
        label: catalog.label_of(subject),
        value: known.map(|known| value(on, subject, known)),
        wants: match &finding.outcome {
            Outcome::Unknown(more) => wants(on, more),
            Outcome::Known(_) | Outcome::Undefined(_) => Vec::new(),
        },
    }
}

fn value(on: UsedOn<'_>, subject: Subject, value: &Value) -> v1::Value {
    use v1::value::Kind;
    let kind = match value {
        Value::Bool(truth) => Kind::Truth(*truth),
        Value::Number(number) | Value::Length(number) | Value::Area(number) => {
            let length_unit = on.used.catalog.declarations().length_unit;
            Kind::Quantity(number::quantity(value.value_type(), number, length_unit))
        }
        Value::Date(date) => Kind::Date(day::write(*date)),
        Value::Option(id) => Kind::Option(id.to_string()),
        Value::NotAsked => Kind::NotAsked(true),
    };
    v1::Value {
        kind: Some(kind),
        text: on.used.catalog.show(subject, value),
    }
}

/// What one unit costs.
pub(super) fn price(on: UsedOn<'_>, judgement: &Judgement) -> v1::Price {
    let tail = judgement.tail.iter().map(|step| v1::PriceStep {
        id: step.id.to_string(),
        label: step.label.clone(),
        percent: step.percent.as_ref().map(|percent| Decimal {
            value: percent.to_string(),
        }),
        amount: money(&step.amount),
    });
    v1::Price {
        items: judgement.items.iter().map(|finding| item(on, finding)).collect(),
        subtotal: judgement.subtotal.as_ref().and_then(money),
        tail: tail.collect(),
        total: total(judgement).and_then(money),
        wants: match &judgement.total {
            Total::Unknown(more) => wants(on, more),
            Total::Known(_) | Total::NotPriced | Total::NoPrice => Vec::new(),
        },
    }
}

/// The price of one unit, where it is known.
pub(super) fn total(judgement: &Judgement) -> Option<&astragal_model::Money> {
    match &judgement.total {
        Total::Known(total) => Some(total),
        Total::NotPriced | Total::Unknown(_) | Total::NoPrice => None,
    }
}

fn item(on: UsedOn<'_>, finding: &ItemFinding) -> v1::PriceItem {
    let catalog = on.used.catalog;
    let (amount, without_price) = match &finding.state {
        ItemState::Amount(amount) => (money(amount), false),
        ItemState::Unknown(_) => (None, false),
        ItemState::NoPrice => (None, true),
    };
    v1::PriceItem {
        id: item_name(catalog, finding.item),
        label: catalog.declarations().items.at(finding.item).label.clone(),
        amount,
        standard: finding.standard,
        without_price,
    }
}

/// The notices that a unit carries, or may carry.
pub(super) fn notices(on: UsedOn<'_>, judgement: &Judgement) -> Vec<v1::Notice> {
    judgement
        .notices
        .iter()
        .map(|finding| notice(on, finding))
        .collect()
}

fn notice(on: UsedOn<'_>, finding: &NoticeFinding) -> v1::Notice {
    let declared = on.used.catalog.declarations().notices.get(finding.notice);
    let kind = match finding.kind {
        NoticeKind::Caution => v1::NoticeKind::Caution,
        NoticeKind::Warranty => v1::NoticeKind::Warranty,
        NoticeKind::SignOff => v1::NoticeKind::SignOff,
    };
    v1::Notice {
        id: finding.id.to_string(),
        kind: kind.into(),
        text: finding.text.clone(),
        basis: declared
            .and_then(|notice| notice.basis.clone())
            .unwrap_or_default(),
        certain: finding.wants.is_none(),
    }
}

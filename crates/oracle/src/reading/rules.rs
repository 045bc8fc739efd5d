//! Judges rules, implicit and declared, and puts the whole reading together.

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{
    Attribute, AttributeIndex, Audience, Effect, OptionEntry, Requirement, Rule, Standing, Verdict,
};

use crate::reading::answer::{Answer, Datum};
use crate::reading::expression::ending;
use crate::reading::reader::{Reader, attribute_name, part_name};
use crate::reading::truth::Truth;
use crate::reading::{Failing, Price, Reading, Stand, at_part};

type Failures = BTreeMap<String, (Failing, Standing)>;

impl Reader<'_> {
    /// Everything that follows; `alone` reads the unit of standards alone.
    pub(crate) fn reading(&self, alone: &Reader<'_>) -> Reading {
        let mut rules = Failures::new();
        self.book_in_force(&mut rules);
        for (index, attribute) in self.declared.attributes.iter() {
            self.implicit(index, attribute, &mut rules);
        }
        let of_policy = self.setting.policy.iter().flat_map(|policy| &policy.terms.rules);
        for rule in self.declared.rules.iter().chain(of_policy) {
            if let Some(failing) = failing(&self.rule(rule)) {
                let standing = self.standing(rule);
                rules.insert(at_part(self.declared, &rule.id, rule.part), (failing, standing));
            }
        }
        let priced = self.priced(alone, &mut rules);
        let open = self.open();
        Reading {
            figures: self.figures(),
            items: priced.items,
            subtotal: priced.subtotal,
            tail: priced.tail,
            notices: self.notices(),
            verdict: verdict(&rules, &open, &priced.total),
            total: priced.total,
            open,
            waivers_used: waivers_used(&rules),
            authorities_not_applied: self.authorities_not_applied(),
            rules,
        }
    }

    /// `!when || require`
    fn rule(&self, rule: &Rule) -> Answer {
        let required = match &rule.requirement {
            Requirement::Expression(expression) => self.answer(expression),
            Requirement::Allowed(table) => self.allowed(table),
            Requirement::Forbidden(table) => self.forbidden(table),
        };
        let kind = match &rule.requirement {
            Requirement::Expression(_) => "requirement",
            Requirement::Allowed(_) => "allowed rows",
            Requirement::Forbidden(_) => "forbidden rows",
        };
        self.meet(kind, ending(&required));
        match &rule.when {
            None => required,
            Some(when) => Answer::or(&[self.answer(when).not(), required]),
        }
    }

    /// A rule binds when its effect is `block`, its authority applies and it is not waived.
    fn standing(&self, rule: &Rule) -> Standing {
        if self.setting.authorities.left_out.contains(&rule.authority) {
            return Standing::NotApplied;
        }
        let today = self.setting.date.to_string();
        for (position, waiver) in self.setting.waivers.iter().enumerate() {
            let begun = waiver.from.to_string() <= today;
            let ended = waiver.until.is_some_and(|until| until.to_string() < today);
            if rule.waivable && waiver.rule == rule.id && begun && !ended {
                return Standing::Waived(position);
            }
        }
        match rule.effect {
            Effect::Block => Standing::Binds,
            Effect::Warn => Standing::Warns,
            Effect::SignOff => Standing::SignOff,
        }
    }

    fn book_in_force(&self, rules: &mut Failures) {
        let Some(book) = self.setting.book else { return };
        let today = self.setting.date.to_string();
        let early = book.from.is_some_and(|from| today < from.to_string());
        let late = book.until.is_some_and(|until| until.to_string() < today);
        if early || late {
            rules.insert("book-in-force".to_owned(), (Failing::Broken, Standing::Binds));
        }
    }

    /// Asked when chosen and the other way round, on offer, and what the plant determines.
    fn implicit(&self, index: AttributeIndex, attribute: &Attribute, rules: &mut Failures) {
        let name = attribute_name(self.declared, attribute);
        let asked = self.asked(index);
        let stand = self.stand(index);
        let agrees = match &stand {
            Stand::Filled(_) | Stand::Picked(..) => asked,
            Stand::NotAsked => asked.not(),
            Stand::Open(_) if asked.as_truth() == Truth::Undefined => asked,
            Stand::Open(_) => Answer::truth(true),
        };
        if let Some(failing) = failing(&agrees) {
            rules.insert(format!("{name}.applies"), (failing, Standing::Binds));
        }
        let (Stand::Filled(option) | Stand::Picked(option, _)) = &stand else {
            return;
        };
        if let Some(standing) = self.not_offered(index, attribute, option, &stand) {
            rules.insert(format!("{name}.offered"), (Failing::Broken, standing));
        }
        if attribute.audience == Audience::Plant {
            let standard = self.standard(index);
            let kept = match standard {
                Answer::Is(Datum::Word(standard)) => Answer::truth(standard == *option),
                // A source that is not asked leaves the target open; then no option is what the standard says.
                Answer::Is(_) => Answer::truth(false),
                unsettled => unsettled,
            };
            self.meet("what the plant determines", ending(&kept));
            if let Some(failing) = failing(&kept) {
                rules.insert(format!("{name}.determined"), (failing, Standing::Binds));
            }
        }
    }

    /// What follows when an option is absent, hidden, or not on offer on the day.
    fn not_offered(
        &self,
        index: AttributeIndex,
        attribute: &Attribute,
        option: &str,
        stand: &Stand,
    ) -> Option<Standing> {
        let Some(entry) = attribute.options.iter().find(|entry| entry.id.as_str() == option) else {
            self.meet("option", "absent");
            return Some(Standing::Binds);
        };
        let hidden = self
            .setting
            .policy
            .and_then(|policy| policy.terms.hidden.get(&index));
        if hidden.is_some_and(|hidden| hidden.contains(option)) {
            self.meet("option", "hidden");
            return Some(Standing::Binds);
        }
        self.out_of_date(entry, stand)
    }

    fn out_of_date(&self, entry: &OptionEntry, stand: &Stand) -> Option<Standing> {
        let today = self.setting.date.to_string();
        let text = |date: Option<astragal_model::Date>| date.map(|date| date.to_string());
        if text(entry.validity.offered_from).is_some_and(|from| today < from) {
            self.meet("option", "not yet offered");
            return Some(Standing::Binds);
        }
        let until = text(entry.validity.offered_until)?;
        if today <= until {
            self.meet("option", "still offered");
            return None;
        }
        let honoured = text(entry.validity.honoured_until).is_some_and(|last| today <= last);
        let in_time = match stand {
            Stand::Picked(_, Some(quoted)) => {
                *quoted <= until && text(entry.validity.offered_from).is_none_or(|from| from <= *quoted)
            }
            _ => false,
        };
        if honoured && in_time {
            self.meet("option", "honoured");
            return Some(Standing::Warns);
        }
        self.meet("option", "retired");
        Some(Standing::Binds)
    }

    fn figures(&self) -> BTreeMap<String, (Answer, Answer)> {
        let figures = self.declared.figures.iter();
        figures
            .map(|(index, figure)| {
                let exists = match figure.part {
                    Some(part) => self.exists(self.declared.parts.at(part)),
                    None => Answer::truth(true),
                };
                let name = part_name(self.declared, &figure.id, figure.part);
                (name, (self.figure(index), exists))
            })
            .collect()
    }

    /// Shown as well when it is unknown, or has no answer.
    fn notices(&self) -> BTreeMap<String, Option<BTreeSet<String>>> {
        let mut carried = BTreeMap::new();
        for notice in &self.declared.notices {
            let when = match &notice.when {
                Some(when) => self.answer(when),
                None => Answer::truth(true),
            };
            self.meet("notice", ending(&when));
            let name = at_part(self.declared, &notice.id, notice.part);
            match (when.as_truth(), when) {
                (Truth::False, _) => {}
                (_, Answer::Wants(wants)) => {
                    carried.insert(name, Some(wants));
                }
                _ => {
                    carried.insert(name, None);
                }
            }
        }
        carried
    }

    fn open(&self) -> BTreeMap<String, BTreeSet<String>> {
        let unit = self.unit().into_iter();
        unit.filter_map(|(name, stand)| match stand {
            Stand::Open(wants) => Some((name, wants)),
            Stand::NotAsked | Stand::Filled(_) | Stand::Picked(..) => None,
        })
        .collect()
    }

    fn authorities_not_applied(&self) -> BTreeSet<String> {
        let left_out = self.setting.authorities.left_out.iter();
        left_out.map(|authority| authority.as_str().to_owned()).collect()
    }
}

/// Broken when false; no row when undefined; undecided when unknown.
fn failing(answer: &Answer) -> Option<Failing> {
    match answer {
        Answer::Is(Datum::Truth(true)) => None,
        Answer::Is(_) => Some(Failing::Broken),
        Answer::Nothing(reason) => Some(Failing::NoRow(reason.clone())),
        Answer::Wants(wants) => Some(Failing::Undecided(wants.clone())),
    }
}

fn waivers_used(rules: &Failures) -> BTreeSet<usize> {
    let mut used = BTreeSet::new();
    for (_, standing) in rules.values() {
        if let Standing::Waived(position) = standing {
            used.insert(*position);
        }
    }
    used
}

fn verdict(rules: &Failures, open: &BTreeMap<String, BTreeSet<String>>, total: &Price) -> Verdict {
    let mut worst = Verdict::Holds;
    if !open.is_empty() || matches!(total, Price::Unknown(_)) {
        worst = Verdict::Undecided;
    }
    for (failing, standing) in rules.values() {
        match (standing, failing) {
            (Standing::Binds, Failing::Undecided(_)) => worst = worst.max(Verdict::Undecided),
            (Standing::Binds, Failing::Broken | Failing::NoRow(_)) => worst = Verdict::Broken,
            _ => {}
        }
    }
    worst
}

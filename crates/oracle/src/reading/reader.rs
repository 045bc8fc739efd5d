//! Reads one unit by demand: what an attribute is, whether it is asked, what its standard and every figure come to.
//!
//! Whatever is asked for is worked out then, by asking for what it depends on, and remembered by name.
//!
//! Always holds: catalogs have no cycles, so that asking ends. Recursion is as deep as the longest chain.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{
    Attribute, AttributeIndex, Choice, Declarations, Definition, FigureIndex, Id, Origin, Part, PartIndex,
    Setting, Standard, Subject,
};

use crate::reading::answer::{Answer, Datum};
use crate::reading::{Met, Stand};

/// One unit in its setting, being read.
pub(crate) struct Reader<'a> {
    pub(crate) setting: &'a Setting<'a>,
    pub(crate) declared: &'a Declarations,
    given: BTreeMap<String, Stand>,
    filling: bool,
    stands: RefCell<BTreeMap<String, Stand>>,
    remembered: RefCell<BTreeMap<String, Answer>>,
    met: RefCell<Met>,
}

impl<'a> Reader<'a> {
    /// Reads what is given; where nothing is given, an attribute is open. When `filling`, open attributes are filled.
    pub(crate) fn new(setting: &'a Setting<'a>, given: BTreeMap<String, Stand>, filling: bool) -> Self {
        Self {
            setting,
            declared: setting.catalog.declarations(),
            given,
            filling,
            stands: RefCell::default(),
            remembered: RefCell::default(),
            met: RefCell::default(),
        }
    }

    /// Notes that a situation was met.
    pub(crate) fn meet(&self, what: &'static str, how: &'static str) {
        *self.met.borrow_mut().entry((what, how)).or_default() += 1;
    }

    /// What was met so far.
    pub(crate) fn all_met(&self) -> Met {
        self.met.borrow().clone()
    }

    /// What every attribute is.
    pub(crate) fn unit(&self) -> BTreeMap<String, Stand> {
        let attributes = self.declared.attributes.iter();
        attributes
            .map(|(index, attribute)| (attribute_name(self.declared, attribute), self.stand(index)))
            .collect()
    }

    /// What an attribute is.
    pub(crate) fn stand(&self, index: AttributeIndex) -> Stand {
        let attribute = self.declared.attributes.at(index);
        let name = attribute_name(self.declared, attribute);
        match self.given.get(&name) {
            None | Some(Stand::Open(_)) => {}
            Some(given) => return given.clone(),
        }
        if let Some(stand) = self.stands.borrow().get(&name) {
            return stand.clone();
        }
        let stand = self.work_stand_out(index, &name);
        self.stands.borrow_mut().insert(name, stand.clone());
        stand
    }

    fn work_stand_out(&self, index: AttributeIndex, name: &str) -> Stand {
        let own = Stand::Open(BTreeSet::from([choice_want(name)]));
        match self.asked(index) {
            Answer::Is(Datum::Truth(true)) => match self.standard(index) {
                Answer::Is(Datum::Word(option)) if self.filling => Stand::Filled(option),
                Answer::Wants(wants) => Stand::Open(wants),
                _ => own,
            },
            Answer::Is(Datum::Truth(false)) if self.filling => Stand::NotAsked,
            Answer::Wants(wants) => Stand::Open(wants),
            _ => own,
        }
    }

    /// Whether the condition under which an attribute is asked holds.
    pub(crate) fn asked(&self, index: AttributeIndex) -> Answer {
        let attribute = self.declared.attributes.at(index);
        let name = format!("asked {}", attribute_name(self.declared, attribute));
        self.remember(name, || match &attribute.applies_when {
            None => Answer::truth(true),
            Some(condition) => self.answer(condition),
        })
    }

    /// What an attribute would be filled with.
    pub(crate) fn standard(&self, index: AttributeIndex) -> Answer {
        let attribute = self.declared.attributes.at(index);
        let name = attribute_name(self.declared, attribute);
        self.remember(format!("standard {name}"), || {
            if let Some(from) = self.of_earlier_part(attribute) {
                return from;
            }
            match self.declared_standard(index) {
                Standard::Ask => Answer::want(choice_want(&name)),
                Standard::Option(option) => Answer::Is(Datum::Word(option.as_str().to_owned())),
                Standard::Formula(formula) => self.answer(formula),
            }
        })
    }

    /// The policy's standard, or else the plant's.
    pub(crate) fn declared_standard(&self, index: AttributeIndex) -> &'a Standard {
        let replaced = self.setting.policy.map(|policy| &policy.terms.standards);
        match replaced.and_then(|standards| standards.get(&index)) {
            Some(standard) => standard,
            None => &self.declared.attributes.at(index).standard,
        }
    }

    /// What stands at the first earlier part that exists; `None` when none does.
    fn of_earlier_part(&self, attribute: &Attribute) -> Option<Answer> {
        let own = attribute.part?;
        for (part, entry) in self.declared.parts.iter() {
            if part >= own {
                return None;
            }
            let there = self.declared.attributes.iter();
            let mut there = there.filter(|(_, other)| other.id == attribute.id && other.part == Some(part));
            let Some((there, _)) = there.next() else { continue };
            match self.exists(entry) {
                Answer::Is(Datum::Truth(true)) => return Some(self.value(there)),
                Answer::Is(_) => self.meet("standard of a later part", "an earlier part is absent"),
                unsettled => return Some(unsettled),
            }
        }
        None
    }

    /// Whether the unit has a part.
    pub(crate) fn exists(&self, part: &Part) -> Answer {
        match &part.when {
            None => Answer::truth(true),
            Some(condition) => self.answer(condition),
        }
    }

    /// What an expression reads at an attribute.
    pub(crate) fn value(&self, index: AttributeIndex) -> Answer {
        match self.stand(index) {
            Stand::Open(wants) => Answer::Wants(wants),
            Stand::NotAsked => Answer::Is(Datum::NotAsked),
            Stand::Filled(option) | Stand::Picked(option, _) => Answer::Is(Datum::Word(option)),
        }
    }

    /// What an expression, a column or a message reads.
    pub(crate) fn subject(&self, subject: Subject) -> Answer {
        let name = subject_name(self.declared, subject);
        match subject {
            Subject::Attribute(index) => self.value(index),
            Subject::Measure(index) => match self.setting.site.measures.get(index) {
                Some(Some(measured)) => Answer::Is(Datum::of(&measured.value)),
                _ => Answer::want(format!("measure {name}")),
            },
            Subject::DeductedBy(index) => {
                let site = self.setting.site;
                let said = match site.measures.get(index) {
                    Some(Some(measured)) => measured.deducted_by,
                    _ => site.deducted.get(&index).copied(),
                };
                match said {
                    Some(astragal_model::DeductedBy::Nobody) => Answer::Is(Datum::Word("nobody".to_owned())),
                    Some(astragal_model::DeductedBy::Dealer) => Answer::Is(Datum::Word("dealer".to_owned())),
                    Some(astragal_model::DeductedBy::Customer) => {
                        Answer::Is(Datum::Word("customer".to_owned()))
                    }
                    None => Answer::want(format!("deducted by {name}")),
                }
            }
            Subject::Fact(index) => match self.setting.site.facts.get(index) {
                Some(Some(value)) => Answer::Is(Datum::of(value)),
                _ => Answer::want(format!("fact {name}")),
            },
            Subject::Figure(index) => self.figure(index),
        }
    }

    /// What a figure comes to.
    pub(crate) fn figure(&self, index: FigureIndex) -> Answer {
        let name = subject_name(self.declared, Subject::Figure(index));
        self.remember(format!("figure {name}"), || {
            match &self.declared.figures.at(index).definition {
                Definition::Formula(formula) => self.answer(formula),
                Definition::Table(table, row_match) => self.look_up(&name, table, *row_match),
            }
        })
    }

    fn remember(&self, name: String, work_out: impl FnOnce() -> Answer) -> Answer {
        if let Some(answer) = self.remembered.borrow().get(&name) {
            return answer.clone();
        }
        let answer = work_out();
        self.remembered.borrow_mut().insert(name, answer.clone());
        answer
    }
}

/// What stands at an attribute of a unit, in the oracle's words.
pub(crate) fn stand_of(choice: &Choice) -> Stand {
    match choice {
        Choice::Open => Stand::Open(BTreeSet::new()),
        Choice::NotAsked => Stand::NotAsked,
        Choice::Chosen { option, origin } => match origin {
            Origin::Standard | Origin::Completed => Stand::Filled(option.as_str().to_owned()),
            Origin::Picked { quoted } => {
                Stand::Picked(option.as_str().to_owned(), quoted.map(|date| date.to_string()))
            }
        },
    }
}

/// `glazing.upper`
pub(crate) fn attribute_name(declared: &Declarations, attribute: &Attribute) -> String {
    part_name(declared, &attribute.id, attribute.part)
}

/// The id, with the part behind it where there is one.
pub(crate) fn part_name(declared: &Declarations, id: &Id, part: Option<PartIndex>) -> String {
    match part.and_then(|part| declared.parts.get(part)) {
        Some(part) => format!("{}.{}", id.as_str(), part.id.as_str()),
        None => id.as_str().to_owned(),
    }
}

/// The name of a subject.
pub(crate) fn subject_name(declared: &Declarations, subject: Subject) -> String {
    match subject {
        Subject::Attribute(index) => attribute_name(declared, declared.attributes.at(index)),
        Subject::Measure(index) | Subject::DeductedBy(index) => {
            declared.measures.at(index).id.as_str().to_owned()
        }
        Subject::Fact(index) => declared.facts.at(index).id.as_str().to_owned(),
        Subject::Figure(index) => {
            let figure = declared.figures.at(index);
            part_name(declared, &figure.id, figure.part)
        }
    }
}

/// How the choice of an attribute is wanted.
pub(crate) fn choice_want(name: &str) -> String {
    format!("choice {name}")
}

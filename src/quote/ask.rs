//! What is wanted, phrased as what to ask, measure, record or choose.
//!
//! "Measure the sill height" for a measure that was not taken; "Find out Sleeping room: yes or no" for a fact that was
//! not recorded. Hidden options and options that may not be ordered on the day are not offered as answers.

use astragal_model::{
    AttributeIndex, Audience, Date, DeductedBy, FactIndex, OptionEntry, Subject, ValueType, Want,
};

use crate::quote::work::{QuotedUnit, Used};

/// LIMIT: how many options are named before the rest are counted.
const NAMED_MAX: usize = 12;

/// A catalog with its price book and policy, as of a day.
#[derive(Clone, Copy)]
pub(crate) struct UsedOn<'a> {
    pub(crate) used: Used<'a>,
    pub(crate) date: Date,
}

impl QuotedUnit<'_> {
    /// What to do to learn one thing that is wanted; a sentence without its stop.
    pub(crate) fn ask(&self, want: &Want) -> String {
        let (used, date) = (self.used, self.date);
        UsedOn { used, date }.ask(want)
    }
}

impl UsedOn<'_> {
    /// What to do to learn one thing that is wanted; a sentence without its stop.
    pub(crate) fn ask(&self, want: &Want) -> String {
        let catalog = self.used.catalog;
        let label = catalog.show_want(want);
        match want {
            Want::Measure(_) => format!("Measure {label}: it was not taken"),
            Want::DeductedBy(measure) => {
                let measured = catalog.label_of(Subject::Measure(*measure));
                let who = listed(
                    DeductedBy::ALL.map(|by| format!("the {}", by.word()).replace("the nobody", "nobody")),
                );
                format!("Say who has deducted from {measured}: {who}")
            }
            Want::Fact(fact) => self.ask_fact(*fact, &label),
            Want::Choice(attribute) => self.ask_choice(*attribute, &label),
            Want::SignOff(_) => format!("Ask the plant: {}", label.trim_start_matches("the plant's ")),
        }
    }

    fn ask_fact(&self, fact: FactIndex, label: &str) -> String {
        let declared = self.used.catalog.declarations().facts.at(fact);
        let answers = match declared.value_type {
            ValueType::Bool => "yes or no".to_owned(),
            ValueType::Option => listed(declared.options.iter().map(|(_, label)| label.clone())),
            other => other.words().to_owned(),
        };
        let place = declared.of.word();
        format!("Find out {label}: {answers} (not recorded for the {place})")
    }

    fn ask_choice(&self, attribute: AttributeIndex, label: &str) -> String {
        let declared = self.used.catalog.declarations().attributes.at(attribute);
        match declared.audience {
            Audience::Customer => format!("{label}: {}", listed(self.offered(attribute))),
            Audience::Plant => format!("Ask the plant: {label} has no standard here"),
        }
    }

    /// The labels of the options that may be chosen on the day.
    fn offered(&self, attribute: AttributeIndex) -> Vec<String> {
        let is_hidden = |entry: &OptionEntry| self.used.hides(attribute, &entry.id);
        let is_offered = |entry: &&OptionEntry| entry.validity.offers(self.date) && !is_hidden(entry);
        let declared = self.used.catalog.declarations().attributes.at(attribute);
        let offered = declared.options.iter().filter(is_offered);
        offered.map(|entry| entry.label.clone()).collect()
    }
}

/// `a`, `a or b`, `a, b or c`; what is past [`NAMED_MAX`] is counted.
fn listed(things: impl IntoIterator<Item = String>) -> String {
    let mut things: Vec<String> = things.into_iter().collect();
    if things.len() > NAMED_MAX {
        let more = things.len() - NAMED_MAX;
        things.truncate(NAMED_MAX);
        return format!("{} or one of {more} more", things.join(", "));
    }
    match things.split_last() {
        None => "nothing is on offer".to_owned(),
        Some((only, [])) => only.clone(),
        Some((last, before)) => format!("{} or {last}", before.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_list_names_a_dozen_and_counts_the_rest() {
        let names = |count: usize| (1..=count).map(|number| number.to_string());
        assert_eq!(listed(names(0)), "nothing is on offer");
        assert_eq!(listed(names(1)), "1");
        assert_eq!(listed(names(3)), "1, 2 or 3");
        assert!(listed(names(12)).ends_with("11 or 12"));
        assert!(listed(names(13)).ends_with("12 or one of 1 more"));
    }
}

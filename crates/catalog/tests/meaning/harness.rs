//! Text in, facts out: a small library and an order are written to a folder, read, filled and judged.
//!
//! A [`Case`] is the text of one catalog with its book, policy and one order; what is not given is left out of the
//! files. [`Case::answer`] reads them through the public interface of the crate and judges one opening; a fault of the
//! files fails the test with all findings. [`Case::faults`] gives the findings instead.

use std::collections::BTreeMap;
use std::path::Path;

use astragal_catalog::order::{ReadOptions, ReadOrder, read_order};

use crate::judged::Judged;

/// The day of every order that does not say another.
pub(crate) const TODAY: &str = "2026-11-25";

/// The texts of a library and an order.
#[derive(Clone, Default)]
pub(crate) struct Case {
    catalog: String,
    length: String,
    files: BTreeMap<String, String>,
    book_head: String,
    round_to: String,
    book_currency: String,
    amounts: String,
    book_rest: String,
    policy: Option<String>,
    places: String,
    opening: String,
    measures: Vec<String>,
    facts: Vec<String>,
    picks: Vec<String>,
    waivers: Vec<String>,
    date: Option<String>,
    date_of_caller: Option<String>,
    left_out: Vec<String>,
    beside: String,
}

impl Case {
    /// A catalog, without its head: lengths are in inches, without a step.
    pub(crate) fn new(catalog: &str) -> Case {
        Case {
            catalog: catalog.to_owned(),
            length: "{ unit = \"in\" }".to_owned(),
            round_to: "0.01".to_owned(),
            book_currency: "USD".to_owned(),
            date: Some(TODAY.to_owned()),
            ..Case::default()
        }
    }

    /// More declarations.
    pub(crate) fn and(mut self, more: &str) -> Case {
        self.catalog += more;
        self
    }

    /// What `length` of the catalog says.
    pub(crate) fn length(mut self, text: &str) -> Case {
        self.length = text.to_owned();
        self
    }

    /// A file of the library; the catalog is in `catalog`, the book in `book`, the policy in `policy`.
    pub(crate) fn file(mut self, path: &str, text: &str) -> Case {
        self.files.insert(path.to_owned(), text.to_owned());
        self
    }

    /// Keys of `[book]`.
    pub(crate) fn book_says(mut self, keys: &str) -> Case {
        self.book_head += keys;
        self.book_head += "\n";
        self
    }

    /// What the book rounds to, when not to a cent.
    pub(crate) fn round_to(mut self, unit: &str) -> Case {
        self.round_to = unit.to_owned();
        self
    }

    /// The currency of the book; the order is in dollars.
    pub(crate) fn book_currency(mut self, code: &str) -> Case {
        self.book_currency = code.to_owned();
        self
    }

    /// An entry of the amounts.
    pub(crate) fn amount(mut self, item: &str, amount: &str) -> Case {
        self.amounts += &format!("{item},{amount}\n");
        self
    }

    /// The sheet of an item `by` attributes.
    pub(crate) fn sheet(mut self, item: &str, csv: &str) -> Case {
        self.book_rest += &format!("[[sheet]]\nitem = \"{item}\"\ntable = \"{item}-sheet.csv\"\n");
        self.file(&format!("book/{item}-sheet.csv"), csv)
    }

    /// A grid with its lower ends.
    pub(crate) fn grid(mut self, id: &str, lower: &str, csv: &str) -> Case {
        self.book_rest += &format!("[[grid]]\nid = \"{id}\"\ntable = \"{id}-grid.csv\"\nlower = {lower}\n");
        self.file(&format!("book/{id}-grid.csv"), csv)
    }

    /// A step of the book's tail.
    pub(crate) fn tail(mut self, id: &str, amount: &str) -> Case {
        self.book_rest += &format!("[[tail]]\nid = \"{id}\"\nlabel = \"{id}\"\n{amount}\n");
        self
    }

    /// Keys of `[policy]`, and what follows them.
    pub(crate) fn policy(mut self, text: &str) -> Case {
        self.policy = Some(text.to_owned());
        self
    }

    /// House, floors, rooms and faces of the order, as the file has them.
    pub(crate) fn places(mut self, text: &str) -> Case {
        self.places += text;
        self
    }

    /// Keys of the opening.
    pub(crate) fn opening(mut self, keys: &str) -> Case {
        self.opening += keys;
        self.opening += "\n";
        self
    }

    /// The places, the opening's keys and the facts of another case.
    pub(crate) fn with_places_of(mut self, other: &Case) -> Case {
        self.places.clone_from(&other.places);
        self.opening.clone_from(&other.opening);
        self.facts.clone_from(&other.facts);
        self
    }

    /// Openings that stand in the order after the one that is asked about, as the file has them.
    pub(crate) fn beside(mut self, text: &str) -> Case {
        self.beside += text;
        self.beside += "\n";
        self
    }

    /// A measure of which nobody says who deducted.
    pub(crate) fn measure(mut self, name: &str, size: &str) -> Case {
        self.measures.push(format!("{name} = \"{size}\""));
        self
    }

    /// A measure from which somebody deducted.
    pub(crate) fn deducted(mut self, name: &str, size: &str, by: &str) -> Case {
        self.measures.push(format!(
            "{name} = {{ size = \"{size}\", deducted_by = \"{by}\" }}"
        ));
        self
    }

    /// A fact of the opening, as the file has it.
    pub(crate) fn fact(mut self, name: &str, value: &str) -> Case {
        self.facts.push(format!("{name} = {value}"));
        self
    }

    /// A pick.
    pub(crate) fn pick(mut self, attribute: &str, option: &str) -> Case {
        self.picks.push(format!(
            "{{ attribute = \"{attribute}\", option = \"{option}\" }}"
        ));
        self
    }

    /// A pick that a quote carried on that day.
    pub(crate) fn quoted(mut self, attribute: &str, option: &str, day: &str) -> Case {
        self.picks.push(format!(
            "{{ attribute = \"{attribute}\", option = \"{option}\", quoted = {day} }}"
        ));
        self
    }

    /// A waiver: its rule and its dates.
    pub(crate) fn waiver(mut self, rule: &str, dates: &str) -> Case {
        self.waivers
            .push(format!("{{ rule = \"{rule}\", reference = \"W-1\", {dates} }}"));
        self
    }

    /// The day that the order states.
    pub(crate) fn on(mut self, day: &str) -> Case {
        self.date = Some(day.to_owned());
        self
    }

    /// An order that states no day.
    pub(crate) fn undated(mut self) -> Case {
        self.date = None;
        self
    }

    /// The day that the caller gives.
    pub(crate) fn date_of_caller(mut self, day: &str) -> Case {
        self.date_of_caller = Some(day.to_owned());
        self
    }

    /// An authority that is left out.
    pub(crate) fn without(mut self, authority: &str) -> Case {
        self.left_out.push(authority.to_owned());
        self
    }

    /// The unit of the opening, filled and judged.
    pub(crate) fn answer(&self) -> Judged {
        let read = self.read();
        let faults = faults(&read);
        match read.order {
            Some(file) => Judged::of(file, &self.left_out),
            None => panic!("{faults:#?}"),
        }
    }

    /// The codes and messages of all errors.
    pub(crate) fn faults(&self) -> Vec<String> {
        let read = self.read();
        let faults = faults(&read);
        assert_eq!(
            read.order.is_none(),
            !faults.is_empty(),
            "an order exactly when there is no error"
        );
        faults
    }

    /// The codes of all errors, each once.
    pub(crate) fn codes(&self) -> Vec<String> {
        let first = |fault: String| fault.split(' ').next().unwrap_or_default().to_owned();
        let mut codes: Vec<String> = self.faults().into_iter().map(first).collect();
        codes.sort();
        codes.dedup();
        codes
    }

    /// What each condition comes to as the requirement of a rule: `true`, `false`, `undefined` or `unknown: ...`.
    pub(crate) fn truths(&self, conditions: &[&str]) -> Vec<String> {
        let mut case = self.clone();
        for (position, condition) in conditions.iter().enumerate() {
            case.catalog +=
                &format!("\n[[rule]]\nid = \"truth-{position}\"\nrequire = '{condition}'\nmessage = \"m\"\n");
        }
        let judged = case.answer();
        (0..conditions.len())
            .map(|position| judged.rule(&format!("truth-{position}")))
            .collect()
    }

    /// What each formula comes to, as it is shown.
    pub(crate) fn values(&self, formulas: &[&str]) -> Vec<String> {
        let mut case = self.clone();
        for (position, formula) in formulas.iter().enumerate() {
            case.catalog +=
                &format!("\n[[figure]]\nid = \"value_{position}\"\nlabel = \"v\"\nformula = '{formula}'\n");
        }
        let judged = case.answer();
        (0..formulas.len())
            .map(|position| judged.figure(&format!("value_{position}")))
            .collect()
    }

    fn read(&self) -> ReadOrder {
        let folder = tempfile::tempdir().unwrap();
        self.write(folder.path());
        let date = self.date_of_caller.as_ref().map(|day| day.parse().unwrap());
        read_order(&folder.path().join("order.toml"), &ReadOptions { date })
    }

    fn write(&self, folder: &Path) {
        let put = |path: &str, text: &str| {
            let path = folder.join(path);
            std::fs::create_dir_all(path.parent().unwrap()).unwrap();
            std::fs::write(path, text).unwrap();
        };
        put(
            "library/library.toml",
            "format = 1\n[library]\nid = \"l\"\nlabel = \"l\"\n",
        );
        let catalog = format!(
            "format = 1\n[catalog]\nid = \"c\"\nlabel = \"C\"\nlength = {}\n{}",
            self.length, self.catalog
        );
        put("library/catalog/catalog.toml", &catalog);
        put("library/book/book.toml", &self.book_text());
        put(
            "library/book/amounts.csv",
            &format!("item,amount\n{}", self.amounts),
        );
        if let Some(policy) = &self.policy {
            let head = "format = 1\n[policy]\nid = \"p\"\nlabel = \"P\"\ncatalogs = [\"c\"]\n";
            put("library/policy/policy.toml", &format!("{head}{policy}"));
        }
        for (path, text) in &self.files {
            put(&format!("library/{path}"), text);
        }
        put("order.toml", &self.order_text());
    }

    fn book_text(&self) -> String {
        let amounts = if self.amounts.is_empty() {
            ""
        } else {
            "amounts = \"amounts.csv\"\n"
        };
        format!(
            "format = 1\n[book]\nid = \"b\"\nlabel = \"B\"\ncatalog = \"c\"\ncurrency = \"{}\"\nround_to = \"{}\"\n{}{}{}",
            self.book_currency, self.round_to, amounts, self.book_head, self.book_rest
        )
    }

    fn order_text(&self) -> String {
        let date = self
            .date
            .as_ref()
            .map_or(String::new(), |day| format!("date = {day}\n"));
        let policy = self
            .policy
            .as_ref()
            .map_or("", |_| "policy = \"library/policy\"\n");
        format!(
            "format = 1\n[order]\nid = \"1\"\n{date}currency = \"USD\"\n[[catalog]]\nid = \"c\"\n\
             folder = \"library/catalog\"\nbook = \"library/book\"\n{policy}{}\n[[opening]]\ntag = \"K1\"\n{}\
             measures = {{ {} }}\nfacts = {{ {} }}\n[[opening.unit]]\ncatalog = \"c\"\npicks = [{}]\nwaivers = [{}]\n{}",
            self.places,
            self.opening,
            self.measures.join(", "),
            self.facts.join(", "),
            self.picks.join(", "),
            self.waivers.join(", "),
            self.beside,
        )
    }
}

fn faults(read: &ReadOrder) -> Vec<String> {
    let errors = read.findings.iter().filter(|finding| finding.is_error());
    errors
        .map(|finding| format!("{} {}", finding.code(), finding.message()))
        .collect()
}

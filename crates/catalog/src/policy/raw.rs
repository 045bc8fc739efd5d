//! What `policy.toml` says, before it is held against a catalog.

use std::collections::BTreeMap;

use astragal_model::{Class, Number, TailStep};

use crate::book::{placed_round_to, read_tail};
use crate::declare::{CLASSES, Fields, Head, IdKind, RawRule, keep_first, policy_rule, table};
use crate::finding::{Finding, Findings, Place};
use crate::library_files::LibraryPath;
use crate::site_values::number;
use crate::source::{FileId, Sources};
use crate::tree::Node;
use crate::typed::PlacedText;

/// `policy.toml`.
#[derive(Debug)]
pub(super) struct RawPolicy {
    pub(super) header: Option<RawPolicyHeader>,
    pub(super) hide: Vec<RawEntry>,
    pub(super) standards: Vec<RawEntry>,
    pub(super) mark_ups: BTreeMap<Class, Number>,
    pub(super) rules: Vec<RawRule>,
    /// `None`: it could not be read.
    pub(super) tail: Option<Vec<TailStep>>,
}

/// What stands at the top of `[policy]`.
#[derive(Debug)]
pub(super) struct RawPolicyHeader {
    pub(super) head: Head,
    pub(super) label: String,
    pub(super) catalogs: Vec<PlacedText>,
    pub(super) round_to: Option<(Number, Place)>,
}

/// An entry of `hide` or `standards`.
#[derive(Debug)]
pub(super) struct RawEntry {
    pub(super) attribute: PlacedText,
    /// The option that is hidden, or the standard.
    pub(super) value: PlacedText,
    pub(super) catalog: Option<PlacedText>,
}

impl RawPolicy {
    /// Takes everything from a file; `None` when it is no table.
    pub(super) fn read(
        root: &Node,
        file: FileId,
        home: &LibraryPath,
        sources: &Sources,
        findings: &Findings,
    ) -> Option<Self> {
        let mut fields = Fields::new(root, file, "policy file", home, sources, findings)?;
        fields.reader.format_is_known();
        let mut raw = Self {
            header: None,
            hide: Vec::new(),
            standards: Vec::new(),
            mark_ups: BTreeMap::new(),
            rules: Vec::new(),
            tail: None,
        };
        if let Some(mut policy) = table(&mut fields, "policy", "policy") {
            raw.header = header(&mut policy);
            raw.hide = entries(&mut policy, "hide", "option");
            raw.standards = entries(&mut policy, "standards", "standard");
            raw.mark_ups = mark_ups(&mut policy);
            policy.reader.finish();
        }
        raw.rules = fields
            .list("rule", "rule", home)
            .filter_map(policy_rule)
            .collect();
        keep_first(
            &mut raw.rules,
            "rules",
            |rule| (rule.head.id.as_str(), &rule.head.place),
            findings,
        );
        raw.tail = read_tail(&mut fields, home);
        fields.reader.finish();
        Some(raw)
    }
}

fn header(policy: &mut Fields<'_>) -> Option<RawPolicyHeader> {
    let head = policy.head(IdKind::Other);
    let label = policy.label();
    let catalogs = if policy.reader.requires("catalogs") {
        policy.texts("catalogs")
    } else {
        None
    };
    let round_to = placed_round_to(policy, None);
    Some(RawPolicyHeader {
        head: head?,
        label,
        catalogs: catalogs?,
        round_to,
    })
}

fn entries(policy: &mut Fields<'_>, key: &'static str, value: &'static str) -> Vec<RawEntry> {
    let what = if key == "hide" {
        "hidden option"
    } else {
        "standard"
    };
    let read = policy.inner_list(key, what).into_iter().filter_map(|mut fields| {
        let attribute = fields.required_text("attribute");
        let value = fields.required_text(value);
        let catalog = fields.text("catalog");
        fields.reader.finish();
        Some(RawEntry {
            attribute: attribute?,
            value: value?,
            catalog,
        })
    });
    read.collect()
}

fn mark_ups(policy: &mut Fields<'_>) -> BTreeMap<Class, Number> {
    let mut mark_ups = BTreeMap::new();
    for mut fields in policy.inner_list("mark_ups", "mark-up") {
        let place = fields.reader.place();
        let class = fields.required_word("class", &CLASSES);
        let percent = percent(&mut fields);
        let findings = fields.findings();
        fields.reader.finish();
        let (Some(class), Some(percent)) = (class, percent) else {
            continue;
        };
        if mark_ups.contains_key(&class) {
            let finding = Finding::error("DUPLICATE_ID", "this class is marked up twice");
            findings.push(finding.at(place).with_help("keep one of the two"));
            continue;
        }
        mark_ups.insert(class, percent);
    }
    mark_ups
}

fn percent(fields: &mut Fields<'_>) -> Option<Number> {
    if !fields.reader.requires("percent") {
        return None;
    }
    let written = fields.reader.decimal_text("percent")?;
    let place = fields.place_of(&written.span);
    let percent = number(&written.value, &place, fields.findings())?;
    if percent >= Number::from(-100_i64) && percent <= Number::from(1_000_000_i64) {
        return Some(percent);
    }
    let message = format!("`percent` is {percent}; expected -100 to 1000000");
    fields.findings().push(
        Finding::error("WRONG_VALUE", message)
            .at(place)
            .with_help("write 25 for a mark-up of a quarter"),
    );
    None
}

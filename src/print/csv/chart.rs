//! The option chart as CSV: attributes, options, rules, limits, a file for each table, figures, notices.

use super::cells::{File, both, file, or_empty, parts, yes_no};
use crate::print::pages::{
    AttributeSheet, Chart, Demand, Drawing, Marks, Message, MessagePiece, OptionLine, RuleGroup, RuleSheet,
    StandardLine, Working,
};
use crate::print::phrases;

/// Adds the files of one chart.
pub(super) fn write(files: &mut Vec<File>, library: &str, chart: &Chart) -> Result<(), csv::Error> {
    let at = |name: &str| format!("catalogs/{}/{name}.csv", chart.id);
    files.push(about(at("catalog"), library, chart)?);
    files.push(attributes(at("attributes"), chart)?);
    files.push(options(at("options"), chart)?);
    files.push(rules(at("rules"), chart)?);
    files.push(size_limits(at("size-limits"), chart)?);
    files.push(figures(at("figures"), chart)?);
    files.push(notices(at("notices"), chart)?);
    for (_, rule) in all_rules(chart) {
        let (Demand::Allowed(drawing) | Demand::Forbidden(drawing)) = &rule.demand else {
            continue;
        };
        files.push(table(at(&format!("rule-{}", rule.id)), drawing)?);
    }
    for figure in &chart.figures {
        if let Working::Table { columns, rows, .. } = &figure.working {
            let columns: Vec<&str> = columns.iter().map(String::as_str).collect();
            let path = at(&format!("figure-{}", figure.id));
            files.push(file(path, &columns, rows.iter().cloned())?);
        }
    }
    Ok(())
}

fn about(path: String, library: &str, chart: &Chart) -> Result<File, csv::Error> {
    let heading = ["library", "catalog", "label", "revision", "says"];
    let row = [
        library,
        chart.id.as_str(),
        &chart.label,
        &chart.revision.full,
        phrases::GOVERNS,
    ];
    file(path, &heading, [row.map(str::to_owned).to_vec()])
}

fn attributes(path: String, chart: &Chart) -> Result<File, csv::Error> {
    let heading = [
        "section",
        "attribute",
        "label",
        "parts",
        "asked_of",
        "asked_when",
        "asked_when_in_words",
        "standard",
        "standard_in_words",
        "rules",
    ];
    let rows = all_attributes(chart).map(|(section, attribute)| {
        let [asked, asked_in_words] = both(attribute.asked_when.as_ref());
        let [standard, standard_in_words] = standard(attribute);
        let rules: Vec<&str> = attribute.rules.iter().map(|rule| rule.as_str()).collect();
        vec![
            section.to_owned(),
            attribute.id.to_string(),
            attribute.label.clone(),
            parts(attribute.parts.as_ref()),
            if attribute.is_determined {
                "plant"
            } else {
                "customer"
            }
            .to_owned(),
            asked,
            asked_in_words,
            standard,
            standard_in_words,
            rules.join("|"),
        ]
    });
    file(path, &heading, rows)
}

fn standard(attribute: &AttributeSheet) -> [String; 2] {
    match &attribute.standard {
        StandardLine::Ask => ["ask".to_owned(), "somebody chooses".to_owned()],
        StandardLine::Option(label) => {
            let option = attribute.options.iter().find(|option| option.is_standard);
            [or_empty(option.map(|option| &option.id)), label.clone()]
        }
        StandardLine::Formula(formula) => both(Some(formula)),
    }
}

fn options(path: String, chart: &Chart) -> Result<File, csv::Error> {
    let heading = [
        "section",
        "attribute",
        "attribute_label",
        "option",
        "option_label",
        "plant_code",
        "is_standard",
        "families",
        "properties",
        "offered_from",
        "offered_until",
        "honoured_until",
        "replaced_by",
    ];
    let rows = all_attributes(chart).flat_map(|(section, attribute)| {
        attribute
            .options
            .iter()
            .map(move |option| option_row(section, attribute, option))
    });
    file(path, &heading, rows)
}

fn option_row(section: &str, attribute: &AttributeSheet, option: &OptionLine) -> Vec<String> {
    let families: Vec<&str> = option.families.iter().map(|family| family.as_str()).collect();
    let properties: Vec<String> = option
        .properties
        .iter()
        .map(|(name, value)| format!("{name}: {value}"))
        .collect();
    vec![
        section.to_owned(),
        attribute.id.to_string(),
        attribute.label.clone(),
        option.id.to_string(),
        option.label.clone(),
        or_empty(option.plant_code.as_ref()),
        yes_no(option.is_standard),
        families.join("|"),
        properties.join("|"),
        or_empty(option.offered_from),
        or_empty(option.offered_until),
        or_empty(option.honoured_until),
        or_empty(option.replaced_by.as_ref().map(|(id, _)| id)),
    ]
}

fn rules(path: String, chart: &Chart) -> Result<File, csv::Error> {
    let heading = [
        "stands_with",
        "rule",
        "authority",
        "effect",
        "waivable",
        "parts",
        "applies_when",
        "applies_when_in_words",
        "must_hold",
        "must_hold_in_words",
        "table",
        "message",
        "basis",
    ];
    let rows = all_rules(chart).map(|(place, rule)| {
        let [when, when_in_words] = both(rule.when.as_ref());
        let ([must, must_in_words], table) = match &rule.demand {
            Demand::Limits(_, condition) | Demand::Condition(condition) => {
                (both(Some(condition)), String::new())
            }
            Demand::Allowed(_) => (both(None), format!("only the rows of rule-{}.csv", rule.id)),
            Demand::Forbidden(_) => (both(None), forbidden(rule)),
        };
        vec![
            place.to_owned(),
            rule.id.to_string(),
            rule.authority.to_string(),
            phrases::effect(rule.effect).to_owned(),
            yes_no(rule.waivable),
            parts(rule.parts.as_ref()),
            when,
            when_in_words,
            must,
            must_in_words,
            table,
            rule.message.written.clone(),
            or_empty(rule.basis.as_ref()),
        ]
    });
    file(path, &heading, rows)
}

/// Marks say what goes together whichever way the rule was written; rows stand as written.
fn forbidden(rule: &RuleSheet) -> String {
    match &rule.demand {
        Demand::Forbidden(Drawing::List { .. }) => format!("none of the rows of rule-{}.csv", rule.id),
        _ => format!("only the pairs marked yes in rule-{}.csv", rule.id),
    }
}

fn size_limits(path: String, chart: &Chart) -> Result<File, csv::Error> {
    let heading = ["rule", "applies_when_in_words", "of", "at_least", "at_most"];
    let rows = all_rules(chart).flat_map(|(_, rule)| {
        let limits = match &rule.demand {
            Demand::Limits(limits, _) => limits.as_slice(),
            _ => &[],
        };
        let [_, when] = both(rule.when.as_ref());
        limits.iter().map(move |limit| {
            vec![
                rule.id.to_string(),
                when.clone(),
                limit.of.clone(),
                or_empty(limit.low.as_ref()),
                or_empty(limit.high.as_ref()),
            ]
        })
    });
    file(path, &heading, rows)
}

fn table(path: String, drawing: &Drawing) -> Result<File, csv::Error> {
    match drawing {
        Drawing::List { columns, rows } => {
            let columns: Vec<&str> = columns.iter().map(String::as_str).collect();
            file(path, &columns, rows.iter().cloned())
        }
        Drawing::Marks(marks) => {
            let corner = corner(marks);
            let columns = marks.columns.iter().map(String::as_str);
            let heading: Vec<&str> = std::iter::once(corner.as_str()).chain(columns).collect();
            let rows = marks.rows.iter().map(|(label, marks)| {
                let marks = marks.iter().map(|mark| yes_no(*mark));
                std::iter::once(label.clone()).chain(marks).collect()
            });
            file(path, &heading, rows)
        }
    }
}

fn corner(marks: &Marks) -> String {
    format!("{} (down), {} (across)", marks.down, marks.across)
}

fn figures(path: String, chart: &Chart) -> Result<File, csv::Error> {
    let heading = [
        "figure",
        "label",
        "parts",
        "unit",
        "shown",
        "formula",
        "formula_in_words",
        "table",
    ];
    let rows = chart.figures.iter().map(|figure| {
        let ([formula, formula_in_words], table) = match &figure.working {
            Working::Formula(formula) => (both(Some(formula)), String::new()),
            Working::Table { which, .. } => (both(None), format!("figure-{}.csv: {which}", figure.id)),
        };
        vec![
            figure.id.to_string(),
            figure.label.clone(),
            parts(figure.parts.as_ref()),
            or_empty(figure.unit.as_ref()),
            yes_no(figure.shown),
            formula,
            formula_in_words,
            table,
        ]
    });
    file(path, &heading, rows)
}

fn notices(path: String, chart: &Chart) -> Result<File, csv::Error> {
    let heading = [
        "notice",
        "kind",
        "parts",
        "when",
        "when_in_words",
        "text",
        "basis",
    ];
    let rows = chart.notices.iter().map(|notice| {
        let [when, when_in_words] = both(notice.when.as_ref());
        vec![
            notice.id.to_string(),
            phrases::kind(notice.kind).to_owned(),
            parts(notice.parts.as_ref()),
            when,
            when_in_words,
            plain(&notice.text),
            or_empty(notice.basis.as_ref()),
        ]
    });
    file(path, &heading, rows)
}

/// A message with its places in brackets.
fn plain(message: &Message) -> String {
    let pieces = message.pieces.iter().map(|piece| match piece {
        MessagePiece::Text(text) => text.clone(),
        MessagePiece::Place(place) => format!("[{place}]"),
    });
    pieces.collect()
}

fn all_attributes(chart: &Chart) -> impl Iterator<Item = (&str, &AttributeSheet)> {
    chart.sections.iter().flat_map(|section| {
        let attributes = section.attributes.iter();
        attributes.map(|attribute| (section.title.as_str(), attribute))
    })
}

/// All rules with the heading under which they stand.
fn all_rules(chart: &Chart) -> impl Iterator<Item = (&str, &RuleSheet)> {
    let sections = chart
        .sections
        .iter()
        .map(|section| (section.title.as_str(), &section.rules));
    let authorities = chart
        .authorities
        .iter()
        .map(|those| (those.label.as_str(), &those.rules));
    std::iter::once(("Sizes", &chart.sizes))
        .chain(sections)
        .chain(std::iter::once(("Other rules", &chart.others)))
        .chain(authorities)
        .flat_map(|(title, group)| rules_of(group).map(move |rule| (title, rule)))
}

fn rules_of(group: &RuleGroup) -> impl Iterator<Item = &RuleSheet> {
    group.tables.iter().chain(&group.limits).chain(&group.conditions)
}

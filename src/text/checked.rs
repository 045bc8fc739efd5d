//! What a library without errors holds, for a person.

use astragal_catalog::check::{BookSummary, CatalogSummary, PolicySummary, Summary};
use astragal_core::race::Race;

use crate::check::diagram::{OfCatalog, Size};
use crate::text::page::{Page, Tone};

/// LIMIT: how many options that nobody can have are named.
const NEVER_MAX: usize = 20;

/// The summary as text.
pub(crate) fn checked(summary: &Summary, diagrams: &[OfCatalog]) -> String {
    let mut page = Page::default();
    if let Some((id, label)) = &summary.library {
        page.heading(
            0,
            Tone::Strong,
            &format!("Library: {}", named(label, id.as_str())),
        );
    }
    for catalog in &summary.catalogs {
        page.blank();
        self::catalog(&mut page, catalog);
        if let Some(of) = diagrams.iter().find(|of| of.catalog == catalog.id) {
            diagram(&mut page, of);
            if let Some(race) = &of.race {
                self::race(&mut page, race);
            }
        }
    }
    for book in &summary.books {
        page.blank();
        self::book(&mut page, book);
    }
    for policy in &summary.policies {
        page.blank();
        self::policy(&mut page, policy);
    }
    page.blank();
    page.heading(0, Tone::Good, "No errors. Every example came out as it says.");
    page.into_text()
}

fn catalog(page: &mut Page, catalog: &CatalogSummary) {
    let counts = &catalog.counts;
    let title = format!("Catalog: {}", named(&catalog.label, catalog.id.as_str()));
    page.spread(
        0,
        Tone::Strong,
        &title,
        &format!("revision {}", catalog.revision.short()),
    );
    let rules: usize = counts.rules.values().sum();
    let by: Vec<String> = counts
        .rules
        .iter()
        .map(|(id, count)| format!("{count} of {id}"))
        .collect();
    let by = if by.is_empty() {
        String::new()
    } else {
        format!(" ({})", by.join(", "))
    };
    let mut things = vec![
        format!(
            "{} with {}",
            counted(counts.attributes, "attribute"),
            counted(counts.options, "option")
        ),
        counted(counts.parts, "part"),
        counted(counts.measures, "measure"),
        counted(counts.facts, "site fact"),
        counted(counts.figures, "figure"),
        format!("{}{by}", counted(rules, "rule")),
        format!(
            "{} with {}",
            counted(counts.tables, "table"),
            counted(counts.rows, "row")
        ),
        counted(counts.items, "price item"),
        counted(counts.notices, "notice"),
        format!("{} proved", counted(counts.examples, "example")),
    ];
    if counts.room_rules > 0 {
        things.insert(6, counted(counts.room_rules, "room rule"));
    }
    if counts.site_checks > 0 {
        things.insert(4, counted(counts.site_checks, "site check"));
    }
    page.text(
        2,
        &format!("in {}: {}", folder(catalog.folder.as_str()), things.join("; ")),
    );
}

fn diagram(page: &mut Page, of: &OfCatalog) {
    let size = match &of.diagram {
        Ok(size) => size,
        Err(limit) => return page.text(2, &format!("no diagram: {limit}")),
    };
    let things = [
        counted(size.nodes, "node"),
        counted(size.edges, "edge"),
        counted(size.gates, "gate"),
        counted(size.cells, "price cell"),
        counted(size.bytes, "byte"),
    ];
    let text = format!(
        "diagram: {}; {} configurations before anything is known of an opening",
        things.join(", "),
        short(&size.configurations)
    );
    page.text(2, &text);
    page.text(2, &format!("compiled in {} ms", size.milliseconds));
    never(page, size);
}

fn race(page: &mut Page, race: &Race) {
    let text = format!(
        "race of the seeds: seed {} wins in round {}, under a cap of {}; it is the one to store",
        race.seed,
        race.rounds,
        counted(race.caps.states, "state")
    );
    page.text(2, &text);
    for run in &race.runs {
        let took = match &run.outcome {
            Ok(taken) => format!(
                "{}, {}, {}",
                counted(taken.edges, "edge"),
                counted(taken.nodes, "node"),
                counted(taken.states, "state")
            ),
            Err(limit) => format!("stopped: {limit}"),
        };
        page.text(4, &format!("seed {}: {took}", run.seed));
    }
}

fn never(page: &mut Page, size: &Size) {
    if size.configurations == "0" {
        return page.text(2, "no configuration holds, whatever is chosen and measured");
    }
    let options = size.never_chosen.iter().filter_map(|never| {
        let option = never.option.as_ref()?;
        Some(format!("{}: {option}", never.attribute))
    });
    let mut named: Vec<String> = options.collect();
    if named.is_empty() {
        return;
    }
    let more = named.len().saturating_sub(NEVER_MAX);
    named.truncate(NEVER_MAX);
    if more > 0 {
        named.push(format!("{more} more"));
    }
    page.text(2, &format!("can never be chosen: {}", named.join("; ")));
}

/// A count in full up to twelve digits, and after that by its first digits, rounded down.
fn short(count: &str) -> String {
    match (count.get(..1), count.get(1..3)) {
        (Some(first), Some(next)) if count.len() > 12 => {
            format!("about {first}.{next}e{}", count.len() - 1)
        }
        _ => count.to_owned(),
    }
}

fn book(page: &mut Page, book: &BookSummary) {
    let title = format!("Price book: {}", named(&book.label, book.id.as_str()));
    page.spread(
        0,
        Tone::Strong,
        &title,
        &format!("revision {}", book.revision.short()),
    );
    let from = book.from.map(|date| format!(" from {date}")).unwrap_or_default();
    let until = book
        .until
        .map(|date| format!(" until {date}"))
        .unwrap_or_default();
    let force = if from.is_empty() && until.is_empty() {
        " without end"
    } else {
        ""
    };
    let place = folder(book.folder.as_str());
    let text = format!(
        "in {place}: for {}, in {}, in force{from}{until}{force}",
        book.catalog, book.currency
    );
    page.text(2, &text);
}

fn policy(page: &mut Page, policy: &PolicySummary) {
    page.heading(
        0,
        Tone::Strong,
        &format!("Dealer policy: {}", named(&policy.label, policy.id.as_str())),
    );
    for (catalog, revision) in &policy.revisions {
        let place = folder(policy.folder.as_str());
        let right = format!("revision {}", revision.short());
        page.spread(2, Tone::Plain, &format!("in {place}: for {catalog}"), &right);
    }
}

fn folder(path: &str) -> &str {
    if path.is_empty() {
        "the library's own folder"
    } else {
        path
    }
}

fn named(label: &str, id: &str) -> String {
    if label == id {
        id.to_owned()
    } else {
        format!("{label} ({id})")
    }
}

fn counted(count: usize, one: &str) -> String {
    if count == 1 {
        format!("1 {one}")
    } else {
        format!("{count} {one}s")
    }
}

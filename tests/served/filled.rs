//! How a unit was filled in, as the service and as the program say it, in one shape.

use serde_json::{Value, json};

use super::asked::list;
use super::v1;

/// What an attribute stands at, as the program has it: an option, or null for *not asked*.
fn becomes(pick: &v1::ChangedPick) -> Value {
    use v1::changed_pick::Becomes;
    match pick.becomes.as_ref() {
        Some(Becomes::To(to)) => json!(to),
        Some(Becomes::NotAsked(true)) => Value::Null,
        other => panic!("a changed pick becomes something: {other:?}"),
    }
}

/// Changed picks: attribute, from, to.
pub(crate) fn changed(picks: &[v1::ChangedPick]) -> Value {
    let one = |pick: &v1::ChangedPick| json!([pick.attribute, pick.from, becomes(pick)]);
    picks.iter().map(one).collect()
}

/// Changed picks of the program, in the shape of [`changed`].
pub(crate) fn as_changed(picks: &Value) -> Value {
    let one = |pick: &Value| json!([pick["attribute"]["id"], pick["from"]["id"], pick["to"]["id"]]);
    list(picks).map(one).collect()
}

/// How the service says that a unit was filled in.
pub(crate) fn filled(found: Option<&v1::FillIn>) -> Value {
    let found = found.expect("how it was filled in");
    let because = found.because.iter().map(|one| json!([one.rule, one.message]));
    let departures = found.departures.iter();
    let departures = departures.map(|one| json!([one.attribute, one.standard]));
    let nearest = found.nearest.as_ref();
    json!({
        "because": because.collect::<Vec<_>>(),
        "departures": departures.collect::<Vec<_>>(),
        "least_changes": found.least_changes,
        "impossible": found.impossible,
        "changes_without_pins": found.changes_without_pins,
        "nearest": nearest.map(|one| json!([changed(&one.changed), one.depends])),
    })
}

/// How the program says it, in the shape of [`filled`].
pub(crate) fn as_completed(completion: &Value) -> Value {
    let because = list(&completion["because"]).map(|one| json!([one["rule"], one["message"]]));
    let departures = list(&completion["departures"]);
    let departures = departures.map(|one| json!([one["attribute"]["id"], one["standard"]["id"]]));
    let nearest = Some(&completion["nearest"]).filter(|one| !one.is_null());
    json!({
        "because": because.collect::<Vec<_>>(),
        "departures": departures.collect::<Vec<_>>(),
        "least_changes": completion["least_changes"],
        "impossible": completion["impossible"],
        "changes_without_pins": completion["changes_without_pins"],
        "nearest": nearest.map(|one| json!([as_changed(&one["changed"]), one["depends"]])),
    })
}

/// The id of the option that stands somewhere; nothing for *not asked* and where it is open.
pub(crate) fn option(choice: &v1::Choice) -> &str {
    use v1::choice::Stands;
    match choice.stands.as_ref() {
        Some(Stands::Option(option)) => option,
        Some(Stands::NotAsked(_)) | None => "",
    }
}

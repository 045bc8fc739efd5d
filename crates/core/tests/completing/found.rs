//! Compares units that were found with those that are to be found.

use astragal_core::complete::{Aim, Completed};
use astragal_model::{
    AttributeIndex, Choice, Origin, Outcome, Setting, Standard, Value, Verdict, fill, judge, slots,
};

use crate::completing::expected::{Asked, Unpicked};
use crate::judged::unit;

/// The units that were found are the first of those that hold, among such as differ only in what stays open the first.
pub(crate) fn compare_found(
    found: &[Completed],
    setting: &Setting<'_>,
    asked: &Asked<'_>,
    holds: &[&Unpicked<'_>],
    place: &str,
) {
    let is_open = |at: &usize| {
        let index = AttributeIndex(*at);
        nobody_may_fill(setting, asked, index)
            || (asked.aim == Aim::Standard && asked.without[*at] && !asked.selection.has(index))
    };
    let filled_in = |values: &[usize]| -> Vec<usize> {
        let filled_in = values.iter().enumerate().filter(|(at, _)| !is_open(at));
        filled_in.map(|(_, value)| *value).collect()
    };
    let mut seen = std::collections::BTreeSet::new();
    let distinct = holds
        .iter()
        .filter(|one| seen.insert(filled_in(&one.judged.values)));
    let mut distinct = distinct.map(|one| (one.judged.values.clone(), one.counts(asked)));
    for (number, unit) in found.iter().enumerate() {
        // Units that come to the same once something is open are handed out once.
        let (_, counts) = distinct
            .find(|(values, _)| *values == unit.values)
            .unwrap_or_else(|| panic!("{place}, unit {number}: {unit:?} is out of order"));
        let cents = if asked.is_priced { unit.cents } else { Some(0) };
        assert_eq!(
            (unit.changes, unit.departures, cents),
            (counts.changes, counts.departures, counts.cents),
            "{place}"
        );
        check_unit(unit, setting, asked, place);
        assert!(
            found[..number].iter().all(|before| before.unit != unit.unit),
            "{place}"
        );
    }
    assert_eq!(found[0].values, holds[0].judged.values, "{place}");
    if found
        .iter()
        .all(|unit| unit.unit.choices.values().all(|one| *one != Choice::Open))
    {
        let mut seen = std::collections::BTreeSet::new();
        let distinct = holds
            .iter()
            .filter(|one| seen.insert(filled_in(&one.judged.values)));
        let expected: Vec<_> = distinct.take(asked.count).map(|one| &one.judged.values).collect();
        let found: Vec<_> = found.iter().map(|unit| &unit.values).collect();
        assert_eq!(found, expected, "{place}");
    }
    let filled = fill(setting, &asked.selection.as_picks(setting));
    if asked.aim == Aim::Standard && judge(setting, &filled).verdict == Verdict::Holds {
        assert_eq!(found[0].unit, filled, "{place}: what is filled holds");
    }
    if asked.aim == Aim::Standard && (found[0].changes, found[0].departures) == (0, 0) {
        assert_eq!(
            found[0].unit, filled,
            "{place}: nothing departs from what is filled"
        );
    }
}

/// Whether an attribute and the same one of every earlier part are asked and nobody picked them.
fn nobody_may_fill(setting: &Setting<'_>, asked: &Asked<'_>, index: AttributeIndex) -> bool {
    let asks = |index| matches!(setting.standard(index), Standard::Ask) && !asked.selection.has(index);
    let mut earlier = setting.catalog.earlier_parts(index).into_iter();
    asks(index) && earlier.all(|(_, attribute)| asks(attribute))
}

/// Options, origins and what is open, one by one.
pub(crate) fn check_unit(completed: &Completed, setting: &Setting<'_>, asked: &Asked<'_>, place: &str) {
    let slots = slots(setting, &completed.unit);
    let whole = unit(setting.catalog, &completed.values, &|_, _| Origin::Standard);
    for (index, choice) in completed.unit.choices.iter() {
        let kept = asked.selection.is_kept(index.0, completed.values[index.0]);
        let standard = match &slots.at(index).standard {
            Outcome::Known(Value::Option(id)) => Some(id),
            _ => None,
        };
        let stands = whole.choices.at(index);
        // It waits for a choice of its own: nobody picks the same one of an earlier part that is there.
        let asks = matches!(setting.standard(index), Standard::Ask) && standard.is_none();
        match choice {
            Choice::Open => {
                assert!(!kept, "{place}");
                let follows =
                    asked.aim == Aim::Standard && (standard.is_none() || *stands == Choice::NotAsked);
                assert!(
                    asks || follows || slots.at(index).asked.wants().is_some(),
                    "{place}: {index:?} is open"
                );
            }
            Choice::NotAsked => assert_eq!(choice, stands, "{place}"),
            Choice::Chosen { option, origin } => {
                assert_eq!(Some(option), stands.option(), "{place}");
                assert_eq!(matches!(origin, Origin::Picked { .. }), kept, "{place}");
                assert!(
                    !nobody_may_fill(setting, asked, index) && (kept || !asks),
                    "{place}: {index:?} is filled in"
                );
                assert!(
                    kept || slots.at(index).asked.wants().is_none(),
                    "{place}: {index:?} may not be asked"
                );
                if *origin == Origin::Standard && asked.aim == Aim::Standard {
                    assert_eq!(standard, Some(option), "{place}");
                }
                if *origin == Origin::Completed {
                    assert!(standard != Some(option), "{place}");
                }
            }
        }
    }
}

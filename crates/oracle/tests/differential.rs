//! The judge and the oracle agree: on what is filled, and on everything that follows from a unit.
//!
//! Each test takes a quarter of 10,000 random worlds, and ten cases of each. A failure prints the seed, and the
//! smallest world found in which the same sort of thing differs: the rule, figure or item, and both answers.

use astragal_model::{Choice, Unit};
use astragal_oracle::compare::{Difference, filled, judged};
use astragal_oracle::generate::{Case, Size, World};

const CASES: u64 = 10;
const WORLDS_A_TEST: u64 = 2_500;
/// How many worlds of each smaller size are tried for a smaller failure.
const TRIES_A_SIZE: u64 = 4_000;

/// One case in which the judge and the oracle differ.
struct Failure {
    world: World,
    count: u64,
    case: Case,
    unit: Unit,
    differences: Vec<Difference>,
}

fn failure(seed: u64, size: Size) -> Option<Failure> {
    let world = World::new(seed, size)?;
    for count in 0..CASES {
        let case = world.case(count);
        let setting = world.setting(&case);
        let (mut differences, from_picks) = filled(&setting, &case.picks);
        let unit = world.unit(count, &case, &from_picks);
        differences.extend(judged(&setting, &unit).0);
        if !differences.is_empty() {
            return Some(Failure {
                count,
                case: case.clone(),
                unit,
                differences,
                world,
            });
        }
    }
    None
}

/// The failure of the same sort with the shortest dump, in the smallest size that has one.
fn smaller(kind: &str) -> Option<Failure> {
    Size::LADDER.into_iter().find_map(|size| {
        (0..TRIES_A_SIZE)
            .filter_map(|seed| failure(seed, size))
            .filter(|failure| {
                failure
                    .differences
                    .iter()
                    .any(|difference| difference.kind == kind)
            })
            .min_by_key(|failure| dump(failure).len())
    })
}

fn dump(failure: &Failure) -> String {
    let declared = failure.world.catalog.declarations();
    let mut text = format!("seed {}, case {}\n", failure.world.seed, failure.count);
    for difference in &failure.differences {
        text += &format!(
            "{} {}\n  judge:  {}\n  oracle: {}\n",
            difference.kind, difference.name, difference.judge, difference.oracle
        );
    }
    let own = |id: &str| {
        failure
            .differences
            .iter()
            .any(|difference| difference.name.split(['@', '.', ' ']).any(|word| word == id))
    };
    let of_policy = failure.world.policy.iter().flat_map(|policy| &policy.terms.rules);
    for rule in declared
        .rules
        .iter()
        .chain(of_policy)
        .filter(|rule| own(rule.id.as_str()))
    {
        text += &format!("{rule:?}\n");
    }
    for figure in declared.figures.values().filter(|figure| own(figure.id.as_str())) {
        text += &format!("{figure:?}\n");
    }
    for item in declared.items.values().filter(|item| own(item.id.as_str())) {
        text += &format!("{item:?}\n");
    }
    for part in declared.parts.values() {
        text += &format!("{part:?}\n");
    }
    for (index, attribute) in declared.attributes.iter() {
        let choice = failure.unit.choices.get(index).unwrap_or(&Choice::Open);
        text += &format!(
            "attribute {} {} {:?}: {choice:?}, applies_when {:?}, standard {:?}\n",
            index.0, attribute.id, attribute.part, attribute.applies_when, attribute.standard
        );
    }
    let figures = declared
        .figures
        .values()
        .map(|figure| format!("{}: {:?}\n", figure.id, figure.definition));
    text += &figures.collect::<String>();
    let standards = failure
        .world
        .policy
        .as_ref()
        .map(|policy| &policy.terms.standards);
    text + &format!("site {:?}\npolicy standards {standards:?}\n", failure.case.site)
}

/// What there is to say about the first failure of a quarter of all worlds.
fn disagreement(quarter: u64) -> Option<String> {
    for seed in quarter * WORLDS_A_TEST..(quarter + 1) * WORLDS_A_TEST {
        assert!(
            World::new(seed, Size::USUAL).is_some(),
            "seed {seed} makes no catalog"
        );
        if let Some(found) = failure(seed, Size::USUAL) {
            let kind = found
                .differences
                .first()
                .map_or("nothing", |difference| difference.kind);
            let least = smaller(kind).map_or_else(String::new, |least| dump(&least));
            let first = dump(&found);
            return Some(format!(
                "seed {seed} differs in a {kind}.\nThe smallest found:\n{least}\nThe first found:\n{first}"
            ));
        }
    }
    None
}

/// Fails with the text as it is written.
macro_rules! agree {
    ($($name:ident: $quarter:expr;)*) => {$(
        #[test]
        fn $name() {
            if let Some(text) = disagreement($quarter) {
                panic!("{text}");
            }
        }
    )*};
}

agree! {
    judge_and_oracle_agree_on_the_first_quarter: 0;
    judge_and_oracle_agree_on_the_second_quarter: 1;
    judge_and_oracle_agree_on_the_third_quarter: 2;
    judge_and_oracle_agree_on_the_fourth_quarter: 3;
}

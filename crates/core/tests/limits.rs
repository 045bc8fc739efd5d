//! A catalog at each limit, and one past it: the error names what was passed and by what.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "these are tests")]

use std::cell::Cell;
use std::collections::BTreeSet;
use std::rc::Rc;

use astragal_core::compile;
use astragal_core::engine::Engine;
use astragal_core::label::Label;
use astragal_core::limit::{Limit, Limits};
use astragal_core::network::{Decision, Network, Relation, RelationState, Variable};
use astragal_core::rows::{Row, Rows};
use astragal_model::{Authorities, Subject};
use astragal_oracle::chance::Chance;
use astragal_oracle::generate::{Size, World};
use num_bigint::BigUint;

use crate::plain::{Plain, Together};

mod plain;

/// Compiles worlds at exactly what they need, and with one less.
fn at_and_past(
    needs: impl Fn(&Engine) -> usize,
    limits: impl Fn(usize) -> Limits,
    is_named: impl Fn(&Limit) -> bool,
) {
    let mut tried = 0;
    for seed in 0..400 {
        let Some(world) = World::new(seed, Size::USUAL) else {
            continue;
        };
        let case = world.case(0);
        let setting = world.setting(&case);
        let policy = setting.policy.map(|policy| &policy.terms);
        let compile =
            |limits: &Limits| Engine::new(setting.catalog, policy, setting.authorities, seed, limits);
        let needed = needs(&compile(&Limits::default()).unwrap());
        if needed == 0 {
            continue;
        }
        assert!(compile(&limits(needed)).is_ok(), "seed {seed}: at the limit");
        let past = compile(&limits(needed - 1)).unwrap_err();
        assert!(is_named(&past), "seed {seed}: {past}");
        assert!(past.to_string().contains('`'), "seed {seed}: {past}");
        tried += 1;
    }
    assert!(tried > 50, "{tried} worlds were tried");
}

#[test]
fn one_gate_too_many_names_the_rules() {
    at_and_past(
        Engine::gate_count,
        |gates| Limits {
            gates,
            ..Limits::default()
        },
        |limit| matches!(limit, Limit::Gates { rules, .. } if !rules.is_empty()),
    );
}

/// Bytes are counted per state: what passes with some number fails with one less.
#[test]
fn one_byte_too_many_names_the_rule_or_the_attributes() {
    one_less_names(
        |bytes| Limits {
            bytes,
            ..Limits::default()
        },
        |limit| match limit {
            Limit::RelationBytes { relation, .. } => Some(vec![relation.clone()]),
            Limit::Bytes { variables, .. } => Some(variables.clone()),
            _ => None,
        },
    );
}

#[test]
fn one_cell_too_many_names_the_items() {
    at_and_past(
        Engine::cell_count,
        |cells| Limits {
            cells,
            ..Limits::default()
        },
        |limit| matches!(limit, Limit::Cells { items, .. } if !items.is_empty()),
    );
}

/// The least limit with which this compiles; with one less it does not, and says so.
fn least_that_passes(compile: impl Fn(usize) -> Result<Engine, Limit>) -> (usize, Option<Limit>) {
    let (mut fails, mut passes) = (None, 1);
    while let Err(limit) = compile(passes) {
        fails = Some((passes, limit));
        passes *= 2;
    }
    while let Some((below, _)) = &fails
        && passes - below > 1
    {
        let middle = below + (passes - below) / 2;
        match compile(middle) {
            Ok(_) => passes = middle,
            Err(limit) => fails = Some((middle, limit)),
        }
    }
    (passes, fails.map(|(_, limit)| limit))
}

/// For worlds of every seed: one less than what passes names `names`, each of which the world has.
fn one_less_names(limits: impl Fn(usize) -> Limits, names: impl Fn(&Limit) -> Option<Vec<String>>) {
    let mut tried = 0;
    for seed in 0..150 {
        let Some(world) = World::new(seed, Size::USUAL) else {
            continue;
        };
        let case = world.case(0);
        let setting = world.setting(&case);
        let policy = setting.policy.map(|policy| &policy.terms);
        let (least, past) = least_that_passes(|most| {
            Engine::new(setting.catalog, policy, setting.authorities, seed, &limits(most))
        });
        let Some(past) = past else { continue };
        let named = names(&past).unwrap_or_default();
        assert!(!named.is_empty(), "seed {seed}, {least}: {past}");
        let text = past.to_string();
        assert!(text.contains(&format!(" {} ", least - 1)), "seed {seed}: {text}");
        let known = known(&world);
        for name in named {
            assert!(known.contains(&name), "seed {seed}: {name}, {known:?}");
            assert!(text.contains(&format!("`{name}`")), "seed {seed}: {text}");
        }
        tried += 1;
    }
    assert!(tried > 50, "{tried} worlds were tried");
}

/// What attributes, rules and items of a world are called.
fn known(world: &World) -> BTreeSet<String> {
    let declared = world.catalog.declarations();
    let attributes = declared.attributes.positions();
    let attributes = attributes.map(|index| world.catalog.name_of(Subject::Attribute(index)));
    let attributes: Vec<String> = attributes.collect();
    let implied = attributes
        .iter()
        .flat_map(|name| ["applies", "determined", "standard"].map(|what| format!("{name}.{what}")));
    let implied: Vec<String> = implied.collect();
    let of_policy = world.policy.iter().flat_map(|policy| &policy.terms.rules);
    let rules = declared
        .rules
        .iter()
        .chain(of_policy)
        .map(|rule| rule.id.to_string());
    let items = declared.items.values().map(|item| item.id.to_string());
    attributes
        .into_iter()
        .chain(implied)
        .chain(rules)
        .chain(items)
        .collect()
}

#[test]
fn one_state_of_a_rule_too_many_names_the_rule() {
    one_less_names(
        |relation_states| Limits {
            relation_states,
            ..Limits::default()
        },
        |limit| match limit {
            Limit::RelationStates { relation, .. } | Limit::RelationRows { relation, .. } => {
                Some(vec![relation.clone()])
            }
            _ => None,
        },
    );
}

#[test]
fn one_state_of_the_compile_too_many_names_the_attributes() {
    one_less_names(
        |states| Limits {
            states,
            ..Limits::default()
        },
        |limit| match limit {
            Limit::States { variables, .. } => Some(variables.clone()),
            _ => None,
        },
    );
}

#[test]
fn one_node_too_many_names_the_attributes() {
    one_less_names(
        |nodes| Limits {
            nodes,
            ..Limits::default()
        },
        |limit| match limit {
            Limit::Nodes { variables, .. } => Some(variables.clone()),
            _ => None,
        },
    );
}

/// A rule of three attributes of so many options each that comes to something else for every tuple.
struct Everything {
    scope: Vec<Variable>,
    size: u32,
    handed_out: Rc<Cell<u32>>,
}

impl Relation for Everything {
    fn name(&self) -> &str {
        "everything"
    }

    fn scope(&self) -> &[Variable] {
        &self.scope
    }

    fn start(&mut self, _order: &[Variable], _limits: &Limits) -> Result<RelationState, Limit> {
        Ok(0)
    }

    fn decision(&self, _state: RelationState, position: usize) -> Decision {
        if position < self.scope.len() {
            Decision::Open
        } else {
            Decision::Allowed(Label::empty())
        }
    }

    fn after(
        &mut self,
        _state: RelationState,
        _position: usize,
        states: &mut Vec<RelationState>,
    ) -> Result<(), Limit> {
        let first = self.handed_out.get() + 1;
        self.handed_out.set(first + self.size - 1);
        states.extend(first..first + self.size);
        Ok(())
    }
}

/// Of 64 million states not many more are made than the limit allows.
#[test]
fn a_grounding_that_is_too_large_is_refused_before_it_is_made() {
    let mut network = Network::default();
    let scope: Vec<Variable> = (0..3)
        .map(|at| network.variable(&format!("a{at}"), 400))
        .collect();
    let handed_out = Rc::new(Cell::new(0));
    network.relations.push(Box::new(Everything {
        scope,
        size: 400,
        handed_out: Rc::clone(&handed_out),
    }));
    let limits = Limits {
        relation_states: 10_000,
        ..Limits::default()
    };
    let error = compile(&mut network, 0, &limits).unwrap_err();
    assert_eq!(error.to_string(), "rule `everything` has more than 10000 states");
    assert!(handed_out.get() <= 10_400, "{}", handed_out.get());
}

/// A thousand rows that leave nine of twelve columns free: each stays in many states, and few states hold many rows.
#[test]
fn a_table_whose_states_hold_too_many_rows_is_refused() {
    let mut network = Network::default();
    let scope: Vec<Variable> = (0..12)
        .map(|at| network.variable(&format!("a{at}"), 10))
        .collect();
    let mut chance = Chance::new(1);
    let row = |chance: &mut Chance| {
        let mut cells: Vec<Option<Vec<usize>>> = vec![None; 12];
        cells
            .iter_mut()
            .take(3)
            .for_each(|cell| *cell = Some(vec![chance.below(10)]));
        chance.shuffle(&mut cells);
        Row { cells, label: None }
    };
    let rows = (0..1_000).map(|_| row(&mut chance)).collect();
    let table = Rows::new("loose", scope, vec![10; 12], rows, Some(Label::empty()), 5_000);
    network.relations.push(Box::new(table));
    let error = compile(&mut network, 0, &Limits::default()).unwrap_err();
    assert_eq!(
        error.to_string(),
        "the states of rule `loose` hold more than 40000 rows of its table"
    );
}

#[test]
fn a_catalog_has_at_most_512_attributes() {
    let with = |count: usize| {
        // The first and the last do not go together, so that the last one is read.
        let mut plain = Plain::of(&[vec![2], vec![1; count - 2], vec![2]].concat());
        plain.forbidden = vec![Together::of(&[(0, 1), (count - 1, 1)])];
        let made = plain.made();
        let engine = Engine::new(
            &made.catalog,
            None,
            &Authorities::default(),
            0,
            &Limits::default(),
        )?;
        Ok::<_, Limit>(engine.configurations())
    };
    assert_eq!(with(512), Ok(BigUint::from(3_u32)));
    assert_eq!(
        with(513).unwrap_err().to_string(),
        "the catalog has 513 attributes, parts expanded; at most 512 are compiled"
    );
}

#[test]
fn an_attribute_has_at_most_4_096_options() {
    let with = |count: usize| {
        let mut plain = Plain::of(&[2, count]);
        plain.forbidden = vec![Together::of(&[(0, 1), (1, count - 1)])];
        let made = plain.made();
        let engine = Engine::new(
            &made.catalog,
            None,
            &Authorities::default(),
            0,
            &Limits::default(),
        )?;
        Ok::<_, Limit>(engine.configurations())
    };
    assert_eq!(with(4_096), Ok(BigUint::from(2 * 4_096 - 1_u32)));
    assert_eq!(
        with(4_097).unwrap_err().to_string(),
        "attribute `a1` has 4097 options; at most 4096 are compiled"
    );
}

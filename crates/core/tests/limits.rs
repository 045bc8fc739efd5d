//! A catalog at each limit, and one past it: the error names what was passed and by what.

#![expect(clippy::unwrap_used, reason = "these are tests")]

use astragal_core::engine::Engine;
use astragal_core::limit::{Limit, Limits};
use astragal_oracle::generate::{Size, World};

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

#[test]
fn too_few_nodes_are_told_with_the_attributes() {
    let node_limit = |nodes| Limits {
        nodes,
        ..Limits::default()
    };
    let world = (0..400).find_map(|seed| World::new(seed, Size::USUAL)).unwrap();
    let case = world.case(0);
    let setting = world.setting(&case);
    let policy = setting.policy.map(|policy| &policy.terms);
    let error = Engine::new(setting.catalog, policy, setting.authorities, 0, &node_limit(0)).unwrap_err();
    assert!(
        matches!(&error, Limit::Nodes { variables, .. } if !variables.is_empty()),
        "{error}"
    );
}

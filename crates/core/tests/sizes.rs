//! A catalog with more attributes, or an attribute with more options, than are compiled, is refused by name.

#![expect(clippy::unwrap_used, reason = "these are tests")]

use astragal_core::engine::Engine;
use astragal_core::limit::{ATTRIBUTES_MAX, Limit, Limits, OPTIONS_MAX};
use astragal_model::{
    Attribute, Audience, Authorities, Catalog, Declarations, Id, OptionEntry, Standard, Validity,
};

fn attribute(id: &str, options: usize) -> Attribute {
    let option = |number: usize| OptionEntry {
        id: Id::new(&format!("option-{number}")),
        label: String::new(),
        families: Default::default(),
        properties: Default::default(),
        plant_code: None,
        validity: Validity::default(),
    };
    Attribute {
        id: Id::new(id),
        part: None,
        label: String::new(),
        section: None,
        options: (0..options).map(option).collect(),
        applies_when: None,
        standard: Standard::Ask,
        audience: Audience::Customer,
    }
}

fn compile(attributes: impl Iterator<Item = Attribute>) -> Result<Engine, Limit> {
    let mut declarations = Declarations::empty("large");
    for attribute in attributes {
        declarations.attributes.push(attribute);
    }
    let catalog = Catalog::new(declarations).unwrap();
    Engine::new(&catalog, None, &Authorities::default(), 0, &Limits::default())
}

#[test]
fn as_many_attributes_as_may_be_are_compiled_and_one_more_is_refused() {
    let attributes = |count: usize| (0..count).map(|number| attribute(&format!("attribute-{number}"), 2));
    assert!(compile(attributes(ATTRIBUTES_MAX)).is_ok());
    let refused = compile(attributes(ATTRIBUTES_MAX + 1)).unwrap_err();
    assert_eq!(
        refused,
        Limit::Attributes {
            count: ATTRIBUTES_MAX + 1
        }
    );
    assert_eq!(
        refused.to_string(),
        "the catalog has 513 attributes, parts expanded; at most 512 are compiled"
    );
}

#[test]
fn as_many_options_as_may_be_are_compiled_and_one_more_is_refused() {
    let large = |count: usize| [attribute("small", 2), attribute("colour", count)].into_iter();
    assert!(compile(large(OPTIONS_MAX)).is_ok());
    let refused = compile(large(OPTIONS_MAX + 1)).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "attribute `colour` has 4097 options; at most 4096 are compiled"
    );
}

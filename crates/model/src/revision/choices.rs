//! Encodes a catalog as a whole, and what there is to choose, to measure and to know.
//!
//! Always holds: every structure is taken apart field by field, so that a new field does not compile until it is
//! encoded. Of the lists, parts, attributes and options are in order; the values of an enumerated fact are sorted.

use super::encoder::{Encode, Encoder, words};
use crate::attribute::{Attribute, Audience, OptionEntry, Standard, Validity};
use crate::bounds::Bounds;
use crate::catalog::{Declarations, Part};
use crate::site::{Measure, Scope, SiteFact, TakenFact, TakenSide};
use crate::site_check::SiteCheck;
use astragal_exact::measure_text::LengthUnit;

impl Encode for Declarations {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            label,
            length_unit,
            authorities,
            parts,
            attributes,
            measures,
            facts,
            site_checks,
            figures,
            rules,
            room_rules,
            items,
            notices,
            drawing,
            examples,
        } = self;
        encoder.put(id).put(label).put(length_unit);
        encoder.unordered(authorities);
        encoder.ordered(parts.values());
        encoder.ordered(attributes.values());
        encoder.unordered(measures.values());
        encoder.unordered(facts.values());
        encoder.unordered(site_checks);
        encoder.unordered(figures.values());
        encoder.unordered(rules);
        encoder.unordered(room_rules);
        encoder.unordered(items.values());
        encoder.unordered(notices);
        encoder.put(drawing);
        encoder.unordered(examples);
    }
}

words!(LengthUnit {
    Inch => "inch",
    Foot => "foot",
    Millimetre => "millimetre",
    Centimetre => "centimetre",
    Metre => "metre",
});

impl Encode for Part {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            kind,
            label,
            when,
        } = self;
        encoder.put(id).put(kind).put(label).put(when);
    }
}

impl Encode for Attribute {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            part,
            label,
            section,
            options,
            applies_when,
            standard,
            audience,
        } = self;
        encoder.put(id).put(part).put(label).put(section).put(options);
        encoder.put(applies_when).put(standard).put(audience);
    }
}

impl Encode for OptionEntry {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            label,
            families,
            properties,
            swatch,
            plant_code,
            validity,
        } = self;
        encoder.put(id).put(label).put(families).put(properties);
        encoder.put(swatch).put(plant_code).put(validity);
    }
}

impl Encode for Validity {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            offered_from,
            offered_until,
            honoured_until,
            replaced_by,
        } = self;
        encoder.put(offered_from).put(offered_until);
        encoder.put(honoured_until).put(replaced_by);
    }
}

impl Encode for Standard {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        match self {
            Self::Ask => encoder.word("ask"),
            Self::Option(option) => {
                encoder.word("option");
                encoder.put(option);
            }
            Self::Formula(formula) => {
                encoder.word("formula");
                encoder.put(formula);
            }
        }
    }
}

words!(Audience {
    Customer => "customer",
    Plant => "plant",
});

impl Encode for Measure {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            label,
            value_type,
            step,
            bounds,
            taken_as,
        } = self;
        encoder.put(id).put(label).put(value_type);
        encoder.put(step).put(bounds).put(taken_as);
    }
}

impl Encode for Bounds {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { least, most } = self;
        encoder.put(least).put(most);
    }
}

impl Encode for SiteFact {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            label,
            value_type,
            options,
            of,
            bounds,
            step,
            taken_as,
        } = self;
        let mut options = options.clone();
        options.sort();
        encoder.put(id).put(label).put(value_type);
        encoder.put(&options).put(of);
        encoder.put(bounds).put(step).put(taken_as);
    }
}

impl Encode for SiteCheck {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { id, require, message } = self;
        encoder.put(id).put(require).put(message);
    }
}

words!(TakenSide {
    Width => "width",
    Height => "height",
});

words!(TakenFact {
    DiagonalDifference => "diagonal-difference",
    WidthSpread => "width-spread",
    HeightSpread => "height-spread",
});

words!(Scope {
    House => "house",
    Floor => "floor",
    Room => "room",
    Face => "face",
    Opening => "opening",
});

//! Measures and facts that are worked out from raw readings.

use super::*;

#[test]
fn a_length_may_be_taken_from_readings() {
    check(
        "[[measure]]\nid = \"width\"\nlabel = \"W\"\ntaken_as = \"width\"\n\
         [[measure]]\nid = \"height\"\nlabel = \"H\"\ntaken_as = \"height\"\n\
         [[site_fact]]\nid = \"askew\"\nlabel = \"A\"\nof = \"opening\"\ntype = \"length\"\ntaken_as = \"diagonal-difference\"\n",
        expect![[r#"
            width: Length step Some(0.0625)
            height: Length step Some(0.0625)
            askew: Length of Opening []
        "#]],
    );
}

#[test]
fn one_measure_is_taken_as_a_side() {
    check(
        "[[measure]]\nid = \"width\"\nlabel = \"W\"\ntaken_as = \"width\"\n\
         [[measure]]\nid = \"width_too\"\nlabel = \"W\"\ntaken_as = \"width\"\n",
        expect![[r#"
            c/catalog.toml:7:6 `"width"` TAKEN_ALONE a measure is `taken_as` width, and none is the other side
              help: say which measure is the width and which the height, or neither
            c/catalog.toml:11:6 `"width_too"` TAKEN_TWICE two measures are `taken_as` width
              help: an opening has one of each; leave one `taken_as` out
              c/catalog.toml:7:6 `"width"`: `width` is one
        "#]],
    );
}

#[test]
fn words_and_types_of_it_are_held_to() {
    check(
        "[[measure]]\nid = \"width\"\nlabel = \"W\"\ntaken_as = \"wide\"\n\
         [[measure]]\nid = \"panes\"\nlabel = \"P\"\ntype = \"number\"\ntaken_as = \"width\"\n\
         [[site_fact]]\nid = \"askew\"\nlabel = \"A\"\nof = \"opening\"\ntype = \"number\"\ntaken_as = \"diagonal-difference\"\n\
         [[site_fact]]\nid = \"spread\"\nlabel = \"S\"\nof = \"opening\"\ntype = \"length\"\ntaken_as = \"width\"\n",
        expect![[r#"
            c/catalog.toml:9:12 `"wide"` UNKNOWN_WORD `taken_as` is `wide`; expected one of `width`, `height`
              help: write one of these words
            c/catalog.toml:14:12 `"width"` KEYS_EXCLUDE measure `panes` has `taken_as`, which only a length has
              help: leave `taken_as` out, or make it a length
            c/catalog.toml:20:12 `"diagonal-difference"` KEYS_EXCLUDE site fact `askew` has `taken_as`, which only a length has
              help: leave `taken_as` out, or make it a length
            c/catalog.toml:26:12 `"width"` UNKNOWN_WORD `taken_as` is `width`; expected one of `diagonal-difference`, `width-spread`, `height-spread`
              help: write one of these words
        "#]],
    );
}

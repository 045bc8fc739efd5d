//! Truth of four values, by a written table.
//!
//! `&&` takes the lesser in the order false, unknown, undefined, true: false decides whatever stands beside it; what
//! is unknown may still turn out false, so it comes before what has no value. `||` is `&&` seen through `!`.

/// How a condition stands.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Truth {
    /// It does not hold.
    False,
    /// It depends on what is not known.
    Unknown,
    /// It has no value.
    Undefined,
    /// It holds.
    True,
}

use Truth::{False, True, Undefined, Unknown};

impl Truth {
    /// `!x`
    pub(crate) fn not(self) -> Self {
        match self {
            False => True,
            True => False,
            Unknown => Unknown,
            Undefined => Undefined,
        }
    }

    /// `x && y`
    pub(crate) fn and(self, other: Self) -> Self {
        match (self, other) {
            (False, False | Unknown | Undefined | True) => False,
            (Unknown, False) => False,
            (Unknown, Unknown | Undefined | True) => Unknown,
            (Undefined, False) => False,
            (Undefined, Unknown) => Unknown,
            (Undefined, Undefined | True) => Undefined,
            (True, other) => other,
        }
    }

    /// `x || y`
    pub(crate) fn or(self, other: Self) -> Self {
        self.not().and(other.not()).not()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ALL: [Truth; 4] = [False, Unknown, Undefined, True];

    #[test]
    fn the_order_of_the_sides_does_not_matter() {
        for left in ALL {
            for right in ALL {
                assert_eq!(left.and(right), right.and(left));
                assert_eq!(left.or(right), right.or(left));
                for third in ALL {
                    assert_eq!(left.and(right).and(third), left.and(right.and(third)));
                }
            }
        }
    }

    #[test]
    fn undefined_is_absorbed_only_where_the_other_side_decides() {
        assert_eq!(Undefined.and(False), False);
        assert_eq!(Undefined.and(True), Undefined);
        assert_eq!(Undefined.or(True), True);
        assert_eq!(Undefined.or(False), Undefined);
        assert_eq!(Undefined.or(Unknown), Unknown);
    }
}

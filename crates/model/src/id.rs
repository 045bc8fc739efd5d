//! Names of things, and positions of things in a catalog.
//!
//! An [`Id`] is a name as a catalog writes it (`screen_mesh`, `colour-pairs`). A position
//! ([`AttributeIndex`], [`FigureIndex`], ...) says which attribute, figure, ... of one catalog is meant; positions
//! of different kinds are different types, so that they are never mixed. [`Indexed`] is a list that is read with its
//! own kind of position.
//!
//! Always holds: a [`crate::Catalog`] has checked at construction that every position inside it is in range.
//! Cost: an `Id` is cloned by counting a reference.

use std::fmt;
use std::marker::PhantomData;
use std::sync::Arc;

/// A name as a catalog, book, policy or order writes it.
///
/// # Examples
/// ```
/// use astragal_model::Id;
/// let id = Id::new("screen_mesh");
/// assert_eq!(id.as_str(), "screen_mesh");
/// assert!(id < Id::new("unit_width"));
/// ```
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id(Arc<str>);

impl Id {
    /// Makes an id of its text. The form of ids is checked where catalogs are read.
    #[must_use]
    pub fn new(text: &str) -> Self {
        Self(Arc::from(text))
    }

    /// The text of the id.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl From<&str> for Id {
    fn from(text: &str) -> Self {
        Self::new(text)
    }
}

impl std::borrow::Borrow<str> for Id {
    fn borrow(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for Id {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&self.0)
    }
}

impl fmt::Debug for Id {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "`{}`", self.0)
    }
}

/// A position in an [`Indexed`] list.
pub trait Position: Copy + Ord {
    /// The position that counts from zero.
    fn from_usize(position: usize) -> Self;
    /// The number of things before this one.
    fn to_usize(self) -> usize;
}

macro_rules! position {
    ($(#[$documentation:meta])* $name:ident) => {
        $(#[$documentation])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
        pub struct $name(pub usize);

        impl Position for $name {
            fn from_usize(position: usize) -> Self {
                Self(position)
            }
            fn to_usize(self) -> usize {
                self.0
            }
        }
    };
}

position!(
    /// Which attribute of a catalog (one a part, where the attribute is `per` part).
    AttributeIndex
);
position!(
    /// Which part of a catalog.
    PartIndex
);
position!(
    /// Which measure of a catalog.
    MeasureIndex
);
position!(
    /// Which site fact of a catalog.
    FactIndex
);
position!(
    /// Which figure of a catalog (one a part, where the figure is `per` part).
    FigureIndex
);
position!(
    /// Which price item of a catalog (one a part, where the item is `per` part).
    ItemIndex
);

/// A list that is read with its own kind of position.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Indexed<I, T> {
    things: Vec<T>,
    position: PhantomData<I>,
}

impl<I, T> Default for Indexed<I, T> {
    fn default() -> Self {
        Self {
            things: Vec::new(),
            position: PhantomData,
        }
    }
}

impl<I: Position, T> Indexed<I, T> {
    /// The number of things in the list.
    #[must_use]
    pub fn len(&self) -> usize {
        self.things.len()
    }

    /// Whether the list holds nothing.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.things.is_empty()
    }

    /// Adds a thing at the end and says where it is.
    pub fn push(&mut self, thing: T) -> I {
        self.things.push(thing);
        I::from_usize(self.things.len() - 1)
    }

    /// The thing at a position, if there is one.
    #[must_use]
    pub fn get(&self, position: I) -> Option<&T> {
        self.things.get(position.to_usize())
    }

    /// The thing at a position that is known to be in range, as those inside a [`crate::Catalog`] are.
    ///
    /// # Panics
    /// When the position lies outside of the list.
    #[must_use]
    #[expect(
        clippy::indexing_slicing,
        reason = "positions in a catalog are checked when it is built"
    )]
    pub fn at(&self, position: I) -> &T {
        &self.things[position.to_usize()]
    }

    /// Puts another thing at a position; a position outside of the list changes nothing.
    pub fn put(&mut self, position: I, thing: T) {
        if let Some(place) = self.things.get_mut(position.to_usize()) {
            *place = thing;
        }
    }

    /// The things with their positions, in order.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = (I, &T)> + ExactSizeIterator {
        self.things
            .iter()
            .enumerate()
            .map(|(position, thing)| (I::from_usize(position), thing))
    }

    /// The things alone, in order.
    pub fn values(&self) -> std::slice::Iter<'_, T> {
        self.things.iter()
    }

    /// All positions, in order.
    pub fn positions(&self) -> impl DoubleEndedIterator<Item = I> + ExactSizeIterator + use<I, T> {
        (0..self.things.len()).map(I::from_usize)
    }
}

impl<I, T> FromIterator<T> for Indexed<I, T> {
    fn from_iter<S: IntoIterator<Item = T>>(things: S) -> Self {
        Self {
            things: things.into_iter().collect(),
            position: PhantomData,
        }
    }
}

impl<I, T> From<Vec<T>> for Indexed<I, T> {
    fn from(things: Vec<T>) -> Self {
        Self {
            things,
            position: PhantomData,
        }
    }
}

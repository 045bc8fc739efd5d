//! Resource names, and the revisions that every answer names.
//!
//! `catalogs/hinged` names the catalog `hinged`; books and policies are named alike.

use crate::serve::fault::{Faults, Reason, shown};
use crate::serve::product::Product;
use crate::serve::v1::{Revision, Revisions};

/// The collections of resources.
pub(super) const CATALOGS: &str = "catalogs";
pub(super) const BOOKS: &str = "books";
pub(super) const POLICIES: &str = "policies";

/// The name of a resource.
pub(super) fn name(collection: &str, id: &str) -> String {
    format!("{collection}/{id}")
}

/// The id in the name of a resource.
pub(super) fn id<'a>(
    written: &'a str,
    collection: &str,
    field: &str,
    faults: &mut Faults,
) -> Option<&'a str> {
    if written.is_empty() {
        let message = format!("a name is asked for, such as `{collection}/some-id`");
        faults.push(Reason::Required, field, &message);
        return None;
    }
    let id = written
        .strip_prefix(collection)
        .and_then(|rest| rest.strip_prefix('/'));
    let id = id.filter(|id| !id.is_empty() && !id.contains('/'));
    if id.is_none() {
        let message = format!("{} is no name like `{collection}/some-id`", shown(written));
        faults.push(Reason::BadName, field, &message);
    }
    id
}

/// The revisions of a catalog, one of its books and one of its policies.
pub(super) fn revisions(product: &Product, book: usize, dealer: Option<usize>) -> Revisions {
    let policy = dealer.and_then(|dealer| product.dealers.get(dealer));
    Revisions {
        catalog: Some(revision(CATALOGS, product.id(), &product.revision)),
        book: product
            .books
            .get(book)
            .map(|priced| revision(BOOKS, priced.book.id.as_str(), &priced.revision)),
        policy: policy.map(|dealer| revision(POLICIES, dealer.policy.terms.id.as_str(), &dealer.revision)),
    }
}

/// One revision.
pub(super) fn revision(collection: &str, id: &str, hash: &str) -> Revision {
    Revision {
        name: name(collection, id),
        hash: hash.to_owned(),
    }
}

//! Random ids.

use std::cell::RefCell;

use super::{local_storage, window};
use crate::record::id::VisitId;

const DEVICE_KEY: &str = "penlight.device";

/// Thirty-two characters, so that five random bits choose one without favour; without i, l, o
/// and u, which are misread for others.
const LETTERS: &[u8; 32] = b"0123456789abcdefghjkmnpqrstvwxyz";

/// A new visit's id: 100 random bits.
pub fn new_visit_id() -> VisitId {
    loop {
        // The first is always taken: the letters and the length are what an id may have.
        if let Some(id) = VisitId::new(&letters(&random::<20>())) {
            return id;
        }
    }
}

/// This device's id, the same each time as far as the browser keeps anything, and at least for
/// the life of the page.
pub fn device_id() -> String {
    thread_local! {
        static DEVICE: RefCell<Option<String>> = const { RefCell::new(None) };
    }
    DEVICE.with_borrow_mut(|known| known.get_or_insert_with(kept_or_new).clone())
}

fn kept_or_new() -> String {
    let storage = local_storage();
    let kept = storage
        .as_ref()
        .and_then(|storage| storage.get_item(DEVICE_KEY).ok()?);
    match kept {
        Some(id) if !id.is_empty() => id,
        _ => {
            let id = letters(&random::<16>());
            if let Some(storage) = storage {
                // Not kept: another one at the next start, and records still tell visits apart.
                let _ = storage.set_item(DEVICE_KEY, &id);
            }
            id
        }
    }
}

/// Random bytes.
pub(super) fn random<const N: usize>() -> [u8; N] {
    let mut bytes = [0; N];
    let drawn = window()
        .and_then(|window| window.crypto().ok())
        .is_some_and(|crypto| crypto.get_random_values_with_u8_array(&mut bytes).is_ok());
    if !drawn {
        // Ids must differ; nothing depends on nobody guessing them.
        bytes.fill_with(|| (js_sys::Math::random() * 256.0) as u8);
    }
    bytes
}

fn letters(bytes: &[u8]) -> String {
    bytes
        .iter()
        .map(|byte| char::from(LETTERS[usize::from(byte % 32)]))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_letter_fits_a_visit_id() {
        let all: Vec<u8> = (0..=255).collect();
        for part in all.chunks_exact(16) {
            assert!(VisitId::new(&letters(part)).is_some());
        }
    }
}

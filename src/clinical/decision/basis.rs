//! What a plan is made for: the verdict and all that speaks for it.
//!
//! Stored with the plan as `2 VERDICT DIGEST`. The digest is made of ids, times and the keys of facts,
//! so that rewording changes none.
//!
//! Earlier versions stored `VERDICT` alone, `VERDICT RULE RULE`, or `VERDICT DIGEST` with a digest of
//! sentences. The first two are read as they are; the last is taken for the decision that stood when
//! the plan was recorded: that is what it was made for.

use crate::clinical::decision::verdict::{Decision, Verdict};

/// Begins every basis of this form.
const FORM: &str = "2 ";

/// What a plan made now is made for: the verdict, and a digest of all that speaks for it, with what
/// is only noted of eating and drinking: a late cough. A plan that is asked for once too often is the
/// safe side.
pub fn basis(decision: &Decision) -> String {
    let mut digest = Digest::new();
    if let Verdict::NotDone(why) = decision.verdict {
        digest.add(why.id());
    }
    let noted = decision.also.iter().filter(|f| f.domain().decides());
    let speaks = decision.reasons.iter().chain(&decision.missing);
    for flag in speaks.chain(noted) {
        digest.add(flag.rule().id);
        digest.add(&flag.fact().key());
    }
    for at in &decision.chokings {
        digest.add(&at.0.to_string());
    }
    format!("{FORM}{} {:016x}", decision.verdict.id(), digest.0)
}

/// Whether what a plan was made for is this decision.
pub fn is_for(basis: &str, decision: &Decision) -> bool {
    let known = [
        self::basis(decision),
        decision.verdict.id().to_owned(),
        rules_of(decision),
    ];
    known.iter().any(|known| known == basis)
}

/// What a plan that is recorded now was made for, in the form of today.
pub fn of_today(stored: String, decision: Option<&Decision>) -> String {
    let was_for = |decision: &&Decision| digest_of(&stored) == Some(decision.verdict.id());
    match decision.filter(was_for) {
        Some(decision) => basis(decision),
        None => stored,
    }
}

/// The verdict of a basis with a digest of sentences.
fn digest_of(stored: &str) -> Option<&str> {
    let (verdict, digest) = stored.split_once(' ')?;
    let is_digest = digest.len() == 16 && digest.bytes().all(|b| b.is_ascii_hexdigit());
    is_digest.then_some(verdict)
}

/// The verdict, and the rules that gave it.
fn rules_of(decision: &Decision) -> String {
    let mut basis = vec![decision.verdict.id()];
    for flag in &decision.reasons {
        if !basis.contains(&flag.rule().id) {
            basis.push(flag.rule().id);
        }
    }
    basis.join(" ")
}

/// FNV-1a; each part ends with a zero, so that two never read as one.
struct Digest(u64);

impl Digest {
    fn new() -> Digest {
        Digest(0xcbf2_9ce4_8422_2325)
    }

    fn add(&mut self, part: &str) {
        for byte in part.bytes().chain([0]) {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }
}

//! Who holds the phone, as they say at the beginning of each visit.

use crate::clinical::knowledge::person::{Initials, InitialsError, Role};
use crate::clinical::knowledge::policy::Policy;

/// A role that somebody took on for one visit. Penlight can't check it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Signed {
    /// The role.
    pub role: Role,
    /// With these initials: a speech-language pathologist always has some.
    pub initials: Option<Initials>,
}

/// Why a visit does not begin with it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SignedError {
    /// Local policy takes this role off the phone.
    NotHere,
    /// The initials were not taken.
    Initials(InitialsError),
}

impl Role {
    /// Those that a visit may be begun with: on a shared phone local policy may leave one.
    pub fn offered(policy: &Policy) -> &'static [Role] {
        match policy.slp_here {
            true => &[Role::Screener, Role::Slp],
            false => &[Role::Screener],
        }
    }
}

impl Signed {
    /// Reads the role that was pressed and the initials that were typed. A trained screener gives
    /// none: what stands in their field is dropped.
    ///
    /// # Errors
    /// [`SignedError`] with the words to show beside the field.
    pub fn read(role: Role, typed: &str, policy: &Policy) -> Result<Signed, SignedError> {
        if !Role::offered(policy).contains(&role) {
            return Err(SignedError::NotHere);
        }
        let initials = match role {
            Role::Screener => None,
            Role::Slp => Some(Initials::parse(typed).map_err(SignedError::Initials)?),
        };
        Ok(Signed { role, initials })
    }
}

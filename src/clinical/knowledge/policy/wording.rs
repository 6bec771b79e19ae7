//! The two wordings of the 3 mL test that are in use.

/// The two wordings in use (source: STM). They differ where a cough and a change of breathing
/// come together, in residue, and in when the test is repeated.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Wording {
    /// As in research reports. The default.
    #[default]
    A,
    /// As in a society's manual: residue counts.
    B,
}

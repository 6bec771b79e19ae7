//! The words of an item and of what can be found.

/// The words of an item.
pub(super) struct ItemWords {
    /// The item's id.
    pub(super) id: &'static str,
    /// Its name, that can stand alone.
    pub(super) name: &'static str,
    /// Its name within a sentence, where that is another; else empty.
    pub(super) within: &'static str,
    /// What to say, word for word; empty where nothing is said.
    pub(super) ask: &'static str,
    /// What to look for, with figures where a figure helps.
    pub(super) look: &'static str,
    /// What to mind; empty where there is nothing.
    pub(super) care: &'static str,
    /// Its exceptions.
    pub(super) exceptions: &'static [ExceptionWords],
}

/// The words of an exception.
pub(super) struct ExceptionWords {
    /// The exception's id within its item.
    pub(super) id: &'static str,
    /// The words on the button, and in the handover where it has no direction.
    pub(super) words: &'static str,
    /// The words before "left" or "right", for a direction; else empty.
    pub(super) towards: &'static str,
}

/// Where an item's words may be left out.
pub(super) const BLANK: ItemWords = ItemWords {
    id: "",
    name: "",
    within: "",
    ask: "",
    look: "",
    care: "",
    exceptions: &[],
};

/// An exception without a direction.
pub(super) const fn is(id: &'static str, words: &'static str) -> ExceptionWords {
    to(id, words, "")
}

/// An exception with a direction.
pub(super) const fn to(
    id: &'static str,
    words: &'static str,
    towards: &'static str,
) -> ExceptionWords {
    ExceptionWords { id, words, towards }
}

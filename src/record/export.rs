//! Everything of a visit as text, for the moment when the store fails or can't be read.

use super::envelope::Envelope;

/// One envelope a line, as JSON, readable by people and machines alike.
pub fn lines(envelopes: &[Envelope]) -> String {
    let mut text = String::new();
    for envelope in envelopes {
        // An envelope is strings and numbers: JSON can always hold it. The body is the part that
        // must not be lost, so it stands in for a line that could not be written.
        let line = serde_json::to_string(envelope).unwrap_or_else(|_| envelope.body.clone());
        text.push_str(&line);
        text.push('\n');
    }
    text
}

//! Fixed words, spoken by the phone itself.
//!
//! Only voices that live on the phone are used: others send the words to a server.

use wasm_bindgen::JsCast;
use web_sys::{SpeechSynthesis, SpeechSynthesisUtterance, SpeechSynthesisVoice};

use super::{has, window};

fn synthesis() -> Option<SpeechSynthesis> {
    let window = window()?;
    if !has(&window, "speechSynthesis") {
        return None;
    }
    window.speech_synthesis().ok()
}

/// The first voice on the phone that speaks English, the language of the words.
fn voice(synthesis: &SpeechSynthesis) -> Option<SpeechSynthesisVoice> {
    synthesis
        .get_voices()
        .iter()
        .filter_map(|voice| voice.dyn_into::<SpeechSynthesisVoice>().ok())
        .find(|voice| voice.local_service() && voice.lang().starts_with("en"))
}

/// Whether this phone can speak without a network. Some browsers know only a moment after they
/// were first asked.
pub fn can() -> bool {
    synthesis().as_ref().and_then(voice).is_some()
}

/// Speaks; what was being spoken stops.
pub fn say(words: &str) {
    let Some(synthesis) = synthesis() else { return };
    let Some(voice) = voice(&synthesis) else {
        return;
    };
    synthesis.cancel();
    if let Ok(utterance) = SpeechSynthesisUtterance::new_with_text(words) {
        utterance.set_voice(Some(&voice));
        utterance.set_lang(&voice.lang());
        // A little slower than talk: it is for somebody who may be hard of hearing.
        utterance.set_rate(0.9);
        synthesis.speak(&utterance);
    }
}

/// Falls silent.
pub fn hush() {
    if let Some(synthesis) = synthesis() {
        synthesis.cancel();
    }
}

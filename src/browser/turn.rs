//! What is done in a turn of its own: after all that the present one shows.

use std::rc::Rc;

use wasm_bindgen::prelude::*;
use web_sys::{MessageChannel, MessagePort};

/// Something to be done in the next turn, whenever it is asked for.
pub struct NextTurn {
    work: Rc<dyn Fn()>,
    port: Option<MessagePort>,
}

impl NextTurn {
    /// What is to be done.
    pub fn new(work: impl Fn() + 'static) -> NextTurn {
        let work: Rc<dyn Fn()> = Rc::new(work);
        NextTurn {
            port: port(Rc::clone(&work)),
            work,
        }
    }

    /// Does it in the next turn; at once where the browser offers none.
    ///
    /// By a message: a timer may wait for others, and is held back in a page that nobody looks at.
    pub fn ask(&self) {
        let port = self.port.as_ref();
        if port.is_none_or(|port| port.post_message(&JsValue::NULL).is_err()) {
            (self.work)();
        }
    }
}

fn port(work: Rc<dyn Fn()>) -> Option<MessagePort> {
    let channel = MessageChannel::new().ok()?;
    let on_message = Closure::<dyn Fn()>::new(move || work());
    channel
        .port1()
        .set_onmessage(Some(on_message.into_js_value().unchecked_ref()));
    Some(channel.port2())
}

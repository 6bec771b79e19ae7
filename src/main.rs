//! Mounts the app. Everything else lives in the library.

use leptos::prelude::*;

fn main() {
    if let Some(place) = penlight::browser::page::place_for_app() {
        mount_to(place.clone(), move || {
            penlight::draw::show(&place, penlight::ui::app::app())
        })
        .forget();
    }
}

//! Mounts the app. Everything else lives in the library.

use leptos::prelude::*;

fn main() {
    match penlight::browser::page::place_for_app() {
        Some(place) => mount_to(place, penlight::ui::app::App).forget(),
        None => mount_to_body(penlight::ui::app::App),
    }
}

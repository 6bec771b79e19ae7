//! Mounts the app. Everything else lives in the library.

use leptos::prelude::*;

fn main() {
    mount_to_body(|| view! { <p>"Penlight"</p> });
}

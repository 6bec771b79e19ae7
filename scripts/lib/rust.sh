# shellcheck shell=bash
# The Rust that compiles to WebAssembly.
#
# The compiler on PATH is used if it has, or can be given, the standard library
# for wasm32-unknown-unknown. Where rustup can't download it, Debian's compiler
# for the web is installed and its standard library is built once, into a
# sysroot of our own under .tools: nothing is written into system folders but
# the packages themselves.

WASM_TARGET=wasm32-unknown-unknown
LEAST_RUST=1.88

check_rust() {
    { have cargo && have rustc; } ||
        die "cargo and rustc are not on PATH." "install Rust $LEAST_RUST or newer (https://rustup.rs), open a new terminal, start again"
    local version
    version=$(rustc --version | awk '{print $2}')
    [ "$(printf '%s\n%s\n' "$LEAST_RUST" "${version%%-*}" | sort -V | head -n 1)" = "$LEAST_RUST" ] ||
        die "Rust $version is too old, $LEAST_RUST or newer is needed." "'rustup update', then start again"
    have cc || have gcc || have clang ||
        die "there is no C compiler, and Rust needs one to link." "Debian and Ubuntu: 'apt-get install build-essential'; macOS: 'xcode-select --install'"
}

# PENLIGHT_WASM_RUST=debian skips the Rust on PATH, to try the other way.
path_rust_has_wasm() {
    [ "${PENLIGHT_WASM_RUST:-}" != debian ] || return 1
    compgen -G "$(rustc --print sysroot)/lib/rustlib/$WASM_TARGET/lib/libcore-*.rlib" >/dev/null
}

# A name for the installed Debian compiler; a new compiler gets a new sysroot.
debian_rust_id() {
    [ -x /usr/bin/rustc ] && [ -x /usr/bin/cargo ] && [ -d /usr/lib/rustlib/src/rust/library ] || return 1
    /usr/bin/rustc -vV | awk '/^release:/ {r = $2} /^commit-hash:/ {h = substr($2, 1, 9)} /^LLVM/ {l = $3} END {print r "-" h "-llvm" l}'
}

debian_sysroot() {
    local id
    id=$(debian_rust_id) || return 1
    printf '%s\n' "$TOOLS/wasm-rust-$id"
}

setup_wasm_std_done() {
    path_rust_has_wasm || { local sysroot && sysroot=$(debian_sysroot) && [ -d "$sysroot" ]; }
}

setup_wasm_std() {
    if have rustup && [ "${PENLIGHT_WASM_RUST:-}" != debian ]; then
        say "Asking rustup for $WASM_TARGET."
        if limited 180 rustup target add "$WASM_TARGET" && path_rust_has_wasm; then
            return 0
        fi
        say "rustup could not provide it. Trying Debian's packages."
    fi
    install_debian_rust
    build_wasm_std
}

install_debian_rust() {
    have apt-get || {
        say "There is no apt-get here, so the standard library for $WASM_TARGET must come from rustup."
        return 1
    }
    apt_install rustc-web cargo-web rust-web-src
    # The linker must be the one of the LLVM that this rustc was built with.
    local llvm
    llvm=$(/usr/bin/rustc -vV | awk '/^LLVM version:/ {split($3, v, "."); print v[1]}')
    apt_install "lld-$llvm"
}

# Builds the standard library for the browser with the compiler in /usr/bin.
build_wasm_std() {
    local sysroot fresh work host llvm
    sysroot=$(debian_sysroot)
    fresh=$sysroot.fresh.$$
    work=$TOOLS/build/wasm-std
    host=$(/usr/bin/rustc -vV | awk '/^host:/ {print $2}')
    llvm=$(/usr/bin/rustc -vV | awk '/^LLVM version:/ {split($3, v, "."); print v[1]}')
    rm -rf "$TOOLS"/wasm-rust-*.fresh.* "$work"
    mkdir -p "$fresh/bin" "$fresh/lib/rustlib/$host/bin" "$fresh/lib/rustlib/$WASM_TARGET/lib" "$work/src"

    # rustc looks for its linker by this name in the host part of the sysroot.
    ln -s "$(command -v "lld-$llvm")" "$fresh/lib/rustlib/$host/bin/rust-lld"
    # Put before PATH for the wasm build only, so that rustup's Rust stays in charge of everything else.
    ln -s /usr/bin/cargo /usr/bin/rustc "$fresh/bin/"

    cat >"$work/Cargo.toml" <<TOML
[package]
name = "empty"
version = "0.0.0"
edition = "2024"

[workspace]

[profile.release]
opt-level = "s"
panic = "abort"
TOML
    : >"$work/src/lib.rs"
    (
        cd "$work" || exit
        unset CARGO_TARGET_DIR CARGO_BUILD_TARGET
        # Without bitcode a later link-time optimisation can't read the library.
        env RUSTC=/usr/bin/rustc RUSTC_BOOTSTRAP=1 RUSTFLAGS="-Cembed-bitcode=yes $(hide_crate_folder)" \
            /usr/bin/cargo build --release -Z build-std=std,panic_abort,proc_macro,test --target "$WASM_TARGET"
    )
    find "$work/target/$WASM_TARGET/release/deps" -name '*.rlib' ! -name 'libempty-*' \
        -exec cp {} "$fresh/lib/rustlib/$WASM_TARGET/lib/" \;
    compgen -G "$fresh/lib/rustlib/$WASM_TARGET/lib/libstd-*.rlib" >/dev/null

    # Objects made with another standard library would only confuse the next build.
    rm -rf "$ROOT/target/$WASM_TARGET"
    rm -rf "$sysroot"
    mv "$fresh" "$sysroot"
    rm -rf "$work"
    find "$TOOLS" -maxdepth 1 -name 'wasm-rust-*' ! -name "${sysroot##*/}" -exec rm -rf {} +
}

# The module must not carry the folders of the machine that built it.
hide_crate_folder() {
    printf '%s\n' "--remap-path-prefix=${CARGO_HOME:-$HOME/.cargo}/registry/src=crates"
}

# Points PATH and flags at the Rust chosen above. For the wasm build only.
use_wasm_rust() {
    local flags sysroot
    flags="$(hide_crate_folder) --remap-path-prefix=$ROOT=penlight"
    if ! path_rust_has_wasm; then
        sysroot=$(debian_sysroot)
        export PATH="$sysroot/bin:$PATH"
        flags="$flags --sysroot=$sysroot"
        unset RUSTC RUSTUP_TOOLCHAIN
    fi
    export CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS=$flags
}

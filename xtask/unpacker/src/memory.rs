//! Memory that is handed out once and never taken back: the unpacker lives for one file, and the allocator that Rust
//! brings would weigh a quarter of it.
#![cfg(target_family = "wasm")]
#![allow(unsafe_code, reason = "an allocator is unsafe to write")]

use std::alloc::{GlobalAlloc, Layout};
use std::arch::wasm32::{memory_grow, memory_size};
use std::sync::atomic::{AtomicUsize, Ordering::Relaxed};

const PAGE: usize = 65_536;

struct Once;

#[global_allocator]
static MEMORY: Once = Once;
/// Where the next piece may begin; 0 before the first.
static NEXT: AtomicUsize = AtomicUsize::new(0);

// SAFETY: every piece lies in memory that was grown for it and overlaps no other, and is aligned as asked.
unsafe impl GlobalAlloc for Once {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        let end = memory_size(0) * PAGE;
        let next = match NEXT.load(Relaxed) {
            0 => end,
            next => next,
        };
        let start = next.next_multiple_of(layout.align());
        let Some(next) = start.checked_add(layout.size()) else {
            return std::ptr::null_mut();
        };
        let missing = next.saturating_sub(end).div_ceil(PAGE);
        if missing > 0 && memory_grow(0, missing) == usize::MAX {
            return std::ptr::null_mut();
        }
        NEXT.store(next, Relaxed);
        start as *mut u8
    }

    unsafe fn dealloc(&self, _: *mut u8, _: Layout) {}

    // Grown memory holds zeros, and none was used before.
    unsafe fn alloc_zeroed(&self, layout: Layout) -> *mut u8 {
        // SAFETY: what holds for this call holds for that one.
        unsafe { self.alloc(layout) }
    }
}

//! What `public/unpack.js` calls: it puts what is packed where [`take`] says, calls [`unpack`], and finds what came out
//! where [`given`] says. It is used for one file and then thrown away.

mod memory;

use std::sync::Mutex;

static BYTES: Mutex<Vec<u8>> = Mutex::new(Vec::new());

/// Makes room for so many packed bytes, and says where they are to be put.
#[allow(unsafe_code, reason = "the name is for the page")]
#[unsafe(no_mangle)]
pub extern "C" fn take(size: usize) -> *mut u8 {
    let Ok(mut bytes) = BYTES.lock() else {
        return std::ptr::null_mut();
    };
    *bytes = vec![0; size.min(cartside_pack::MOST)];
    bytes.as_mut_ptr()
}

/// Unpacks what was put there: the length of what came out, or 0 if it was damaged.
#[allow(unsafe_code, reason = "the name is for the page")]
#[unsafe(no_mangle)]
pub extern "C" fn unpack() -> usize {
    let Ok(mut bytes) = BYTES.lock() else {
        return 0;
    };
    *bytes = cartside_pack::unpack(&bytes).unwrap_or_default();
    bytes.len()
}

/// Where it lies.
#[allow(unsafe_code, reason = "the name is for the page")]
#[unsafe(no_mangle)]
pub extern "C" fn given() -> *const u8 {
    BYTES
        .lock()
        .map_or(std::ptr::null(), |bytes| bytes.as_ptr())
}

//! A file on its way out: put together from parts by the browser, so that pictures never pass through this program's
//! own memory, which does not shrink again.

use super::error::FileError;
use crate::photo::ObjectUrl;
use js_sys::{Array, ArrayBuffer, Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, File, FilePropertyBag, HtmlAnchorElement, Navigator, ShareData};

/// What is carried out.
const ZIP: &str = "application/zip";

/// The parts of a file in the order in which they stand there. The browser has them, on its disk if it likes; in this
/// program's own memory there is none of them.
#[derive(Clone)]
pub struct Parts {
    list: Array,
}

impl Parts {
    /// None yet.
    pub fn new() -> Self {
        Self { list: Array::new() }
    }

    /// Bytes made here.
    pub fn bytes(&self, bytes: &[u8]) {
        self.list.push(&Uint8Array::from(bytes));
    }

    /// Bytes that the browser has already.
    pub fn blob(&self, blob: &Blob) {
        self.list.push(blob);
    }
}

/// Hands the bytes of a picture over to the browser; the buffer need not be kept.
///
/// # Errors
/// The browser will not take them, most likely for want of memory.
pub fn handed_over(bytes: &ArrayBuffer) -> Result<Blob, FileError> {
    Blob::new_with_buffer_source_sequence(&Array::of1(bytes)).map_err(|_| FileError::NotPacked)
}

/// How this device lets a file out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Into the device's downloads.
    Download,
    /// Through the device's own choice of where to send it; an iOS Home-Screen app has no downloads.
    Share,
}

/// How handing over through the device's own choice ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shared {
    /// The device took the file.
    Taken,
    /// The user turned away from it.
    Dismissed,
}

/// A file ready to go out. Keep it until the user has it: dropping it lets the browser forget the bytes.
pub struct Parcel {
    file: File,
    url: ObjectUrl,
}

impl Parcel {
    /// Puts the parts together as one ZIP file of the given name.
    ///
    /// # Errors
    /// The browser could not, most likely for want of memory.
    pub fn pack(parts: &Parts, name: &str) -> Result<Self, FileError> {
        let file = packed(parts, name).map_err(|_| FileError::NotPacked)?;
        let url = ObjectUrl::of(&file).ok_or(FileError::NotPacked)?;
        Ok(Self { file, url })
    }

    /// Its name.
    pub fn name(&self) -> String {
        self.file.name()
    }

    /// Its size in bytes.
    pub fn size(&self) -> u64 {
        self.file.size() as u64
    }

    /// The way this file can go out here.
    pub fn way(&self) -> Way {
        match web_sys::window() {
            Some(window) if is_home_screen(&window.navigator()) => {
                self.shared_way(&window.navigator())
            }
            _ => Way::Download,
        }
    }

    /// Puts the file into the device's downloads.
    ///
    /// # Errors
    /// The page gives no link to press.
    pub fn download(&self) -> Result<(), FileError> {
        press_link(self.url.as_str(), &self.name()).ok_or(FileError::NotHandedOut)
    }

    /// Hands the file to the device's own choice of where to send it. Call it straight from a press of a button:
    /// the browser refuses it otherwise.
    ///
    /// # Errors
    /// The device would not take it.
    pub async fn share(&self) -> Result<Shared, FileError> {
        let navigator = web_sys::window()
            .ok_or(FileError::NotHandedOut)?
            .navigator();
        if self.shared_way(&navigator) != Way::Share {
            return Err(FileError::NotHandedOut);
        }
        match JsFuture::from(navigator.share_with_data(&self.share_data())).await {
            Ok(_) => Ok(Shared::Taken),
            Err(thrown) if is_dismissal(&thrown) => Ok(Shared::Dismissed),
            Err(_) => Err(FileError::NotHandedOut),
        }
    }

    fn shared_way(&self, navigator: &Navigator) -> Way {
        let there = has_function(navigator, "canShare") && has_function(navigator, "share");
        if there && navigator.can_share_with_data(&self.share_data()) {
            return Way::Share;
        }
        Way::Download
    }

    fn share_data(&self) -> ShareData {
        let data = ShareData::new();
        let files = Array::of1(&self.file);
        // Setting a field of a plain object made here cannot fail.
        drop(Reflect::set(&data, &"files".into(), &files));
        data
    }
}

fn packed(parts: &Parts, name: &str) -> Result<File, JsValue> {
    let options = FilePropertyBag::new();
    options.set_type(ZIP);
    File::new_with_blob_sequence_and_options(&parts.list, name, &options)
}

fn press_link(url: &str, name: &str) -> Option<()> {
    let document = web_sys::window()?.document()?;
    let link: HtmlAnchorElement = document.create_element("a").ok()?.dyn_into().ok()?;
    link.set_href(url);
    link.set_download(name);
    // Firefox presses only links that stand in the page.
    document.body()?.append_child(&link).ok()?;
    link.click();
    link.remove();
    Some(())
}

/// iOS alone has this field, true in an app opened from the Home Screen.
fn is_home_screen(navigator: &Navigator) -> bool {
    Reflect::get(navigator, &"standalone".into()).is_ok_and(|value| value.is_truthy())
}

fn has_function(navigator: &Navigator, name: &str) -> bool {
    Reflect::get(navigator, &name.into()).is_ok_and(|value| value.is_function())
}

fn is_dismissal(thrown: &JsValue) -> bool {
    thrown
        .dyn_ref::<web_sys::DomException>()
        .is_some_and(|exception| exception.name() == "AbortError")
}

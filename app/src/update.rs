//! Whether the app is really on the device, and whether a newer one waits: asked of the service worker.

use js_sys::{Array, Date, Function, Object, Promise, Reflect};
use leptos::prelude::set_timeout;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{
    Event, MessageChannel, MessageEvent, RegistrationOptions, ServiceWorker,
    ServiceWorkerContainer, ServiceWorkerRegistration, ServiceWorkerState,
    ServiceWorkerUpdateViaCache, Window,
};

/// The worker, beside the page.
const SCRIPT: &str = "sw.js";

/// How long a worker may take to look through its cache, in milliseconds.
const PATIENCE: i32 = 15_000;

/// After what time one that comes and has not said that it waits is asked again.
const AGAIN: Duration = Duration::from_secs(5);

/// How long a page that stays open goes without looking for a newer build, in milliseconds.
const LOOK: i32 = 60 * 60 * 1000;

/// How the app stands on this device.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum State {
    /// This browser, or this address, knows no service worker: the app needs the network.
    NotSupported,
    /// The files are being fetched.
    Preparing,
    /// Every file of the build is on the device, checked by its digest.
    Ready {
        /// The digest of the build, in hexadecimal.
        build: String,
    },
    /// The app is on the device, and a newer one is too and waits to take over, or to be changed to where another tab
    /// let it take over.
    Waiting {
        /// The digest of the newer build, in hexadecimal.
        build: String,
    },
    /// The app is not, or not wholly, on the device.
    Failed {
        /// What went wrong, in the browser's or the worker's words.
        what: String,
    },
}

type Listener = Closure<dyn FnMut(Event)>;

/// What a worker says of its build.
struct Reply {
    ready: bool,
    build: String,
    missing: u32,
}

/// The watch over the service worker. A clone is the same watch.
#[derive(Clone)]
pub struct Updates {
    inner: Rc<Inner>,
}

struct Inner {
    tell: Box<dyn Fn(State)>,
    told: RefCell<Option<State>>,
    registration: RefCell<Option<ServiceWorkerRegistration>>,
    listeners: RefCell<Vec<Listener>>,
    /// Whether another tab has let a newer build take over, while this page still runs the older one.
    overtaken: Cell<bool>,
    reloading: Cell<bool>,
    /// When a newer build was last looked for, in milliseconds since 1970.
    looked: Cell<f64>,
}

impl Updates {
    /// Registers the worker and tells each state as it comes, beginning with [`State::Preparing`] or
    /// [`State::NotSupported`].
    pub fn start(tell: impl Fn(State) + 'static) -> Self {
        let updates = Self {
            inner: Rc::new(Inner {
                tell: Box::new(tell),
                told: RefCell::new(None),
                registration: RefCell::new(None),
                listeners: RefCell::new(Vec::new()),
                overtaken: Cell::new(false),
                reloading: Cell::new(false),
                looked: Cell::new(Date::now()),
            }),
        };
        let Some(container) = container() else {
            updates.tell(State::NotSupported);
            return updates;
        };
        updates.tell(State::Preparing);
        let registering = updates.clone();
        spawn_local(async move { registering.register(container).await });
        updates
    }

    /// Lets the waiting build take over and reloads the page. Everything typed must be stored before.
    pub fn take_over(&self) {
        let registration = self.inner.registration.borrow().clone();
        let waiting = registration.and_then(|registration| registration.waiting());
        let (Some(waiting), Some(container)) = (waiting, container()) else {
            // Another tab has let it take over.
            return self.reload_once();
        };
        let reload = self.listener(|updates| updates.reload_once());
        container.set_oncontrollerchange(Some(&reload));
        // A page that no worker controls yet hears no change of controller.
        let settled = waiting.clone();
        let activated = self.listener(move |updates| {
            if settled.state() == ServiceWorkerState::Activated {
                updates.reload_once();
            }
        });
        waiting.set_onstatechange(Some(&activated));
        if let Some(message) = message("take-over") {
            // A worker that cannot be told goes on waiting, and the key is there to be tapped again.
            drop(waiting.post_message(&message));
        }
    }

    async fn register(self, container: ServiceWorkerContainer) {
        let options = RegistrationOptions::new();
        options.set_update_via_cache(ServiceWorkerUpdateViaCache::None);
        let asked = container.register_with_options(SCRIPT, &options);
        match JsFuture::from(asked).await.map(JsValue::dyn_into) {
            Ok(Ok(registration)) => {
                self.follow_controller(&container);
                self.watch(registration).await;
            }
            Ok(Err(_)) => self.failed("the browser gave no registration"),
            Err(thrown) => self.failed(&words_of(&thrown)),
        }
    }

    async fn watch(self, registration: ServiceWorkerRegistration) {
        let found = self.listener(|updates| updates.follow_installing());
        registration.set_onupdatefound(Some(&found));
        *self.inner.registration.borrow_mut() = Some(registration);
        self.follow_installing();
        self.keep_looking();
        self.ask().await;
    }

    /// A browser looks for a newer build when a page is loaded; one that stays open for days looks by itself, when it
    /// comes back into sight and as the hours go by.
    fn keep_looking(&self) {
        let look = self.listener(|updates| updates.look());
        if let Some(window) = web_sys::window() {
            // A window without a clock still looks when it comes back into sight.
            drop(window.set_interval_with_callback_and_timeout_and_arguments_0(&look, LOOK / 4));
            if let Some(document) = window.document() {
                document.set_onvisibilitychange(Some(&look));
            }
        }
    }

    fn look(&self) {
        let registration = self.inner.registration.borrow().clone();
        let now = Date::now();
        let (Some(registration), Some(window)) = (registration, web_sys::window()) else {
            return;
        };
        // A clock that was set back may not keep it from looking.
        let lately = (0.0..f64::from(LOOK)).contains(&(now - self.inner.looked.get()));
        if lately || !window.navigator().on_line() {
            return;
        }
        self.inner.looked.set(now);
        spawn_local(async move {
            let Ok(looking) = registration.update() else {
                return;
            };
            // A host that is out of reach is asked again in an hour.
            drop(JsFuture::from(looking).await);
        });
    }

    /// The first controller a page gets is of its own build; another is of a newer one.
    fn follow_controller(&self, container: &ServiceWorkerContainer) {
        let had = Cell::new(container.controller().is_some());
        let changed = self.listener(move |updates| {
            if had.replace(true) {
                updates.inner.overtaken.set(true);
                let asking = updates.clone();
                spawn_local(async move { asking.ask().await });
            }
        });
        container.set_oncontrollerchange(Some(&changed));
    }

    fn follow_installing(&self) {
        let registration = self.inner.registration.borrow().clone();
        let Some(worker) = registration.and_then(|registration| registration.installing()) else {
            return;
        };
        let changed = self.listener(|updates| {
            let asking = updates.clone();
            spawn_local(async move { asking.ask().await });
        });
        worker.set_onstatechange(Some(&changed));
    }

    /// Tells how things stand now.
    async fn ask(&self) {
        let registration = self.inner.registration.borrow().clone();
        if let Some(registration) = registration {
            let state = match state_of(&registration).await {
                State::Ready { build } if self.inner.overtaken.get() => State::Waiting { build },
                state => state,
            };
            let comes = registration.installing().is_some() || registration.waiting().is_some();
            if comes && !matches!(state, State::Waiting { .. }) {
                self.ask_again();
            }
            self.tell(state);
        }
    }

    /// A worker that is only just being started may be too slow to answer, and a browser may forget to tell that one
    /// has been installed.
    fn ask_again(&self) {
        let updates = self.clone();
        let later = move || spawn_local(async move { updates.ask().await });
        set_timeout(later, AGAIN);
    }

    fn failed(&self, what: &str) {
        self.tell(State::Failed {
            what: what.to_owned(),
        });
    }

    /// Tells a state that differs from the one told last.
    fn tell(&self, state: State) {
        let before = self.inner.told.borrow_mut().replace(state.clone());
        if before.as_ref() != Some(&state) {
            (self.inner.tell)(state);
        }
    }

    fn reload_once(&self) {
        if let Some(window) = web_sys::window().filter(|_| !self.inner.reloading.replace(true)) {
            // A page that cannot be reloaded goes on with the build it runs.
            drop(window.location().reload());
        }
    }

    /// A handler that lives as long as the page: the watch is never ended before it.
    fn listener(&self, act: impl Fn(&Updates) + 'static) -> Function {
        let inner = Rc::downgrade(&self.inner);
        let closure = Closure::new(move |_: Event| {
            if let Some(inner) = inner.upgrade() {
                act(&Updates { inner });
            }
        });
        let handler: Function = closure.as_ref().unchecked_ref::<Function>().clone();
        self.inner.listeners.borrow_mut().push(closure);
        handler
    }
}

async fn state_of(registration: &ServiceWorkerRegistration) -> State {
    if let (Some(waiting), Some(_)) = (registration.waiting(), registration.active()) {
        return match asked(&waiting).await {
            Some(reply) if reply.ready => State::Waiting { build: reply.build },
            _ => active_state(registration).await,
        };
    }
    active_state(registration).await
}

async fn active_state(registration: &ServiceWorkerRegistration) -> State {
    let Some(active) = registration.active() else {
        return unborn_state(registration);
    };
    match asked(&active).await {
        Some(reply) if reply.ready => State::Ready { build: reply.build },
        Some(reply) => State::Failed {
            what: format!("{} files of the app are missing", reply.missing),
        },
        None => State::Failed {
            what: "the service worker did not answer".to_owned(),
        },
    }
}

fn unborn_state(registration: &ServiceWorkerRegistration) -> State {
    if registration.installing().is_some() || registration.waiting().is_some() {
        return State::Preparing;
    }
    State::Failed {
        what: "not all files of the app arrived".to_owned(),
    }
}

/// Asks a worker whether every digest of its build is in its cache; no answer in time is none.
async fn asked(worker: &ServiceWorker) -> Option<Reply> {
    let channel = MessageChannel::new().ok()?;
    let window = web_sys::window()?;
    let answer = answered(&window, &channel);
    let transfer = Array::of1(&channel.port2());
    worker
        .post_message_with_transferable(&message("is-ready")?, &transfer)
        .ok()?;
    let event = JsFuture::from(answer).await.ok();
    channel.port1().close();
    reply_of(&event?.dyn_into::<MessageEvent>().ok()?.data())
}

fn answered(window: &Window, channel: &MessageChannel) -> Promise {
    Promise::new(&mut |done: Function, failed: Function| {
        channel.port1().set_onmessage(Some(&done));
        let timed = window.set_timeout_with_callback_and_timeout_and_arguments_0(&failed, PATIENCE);
        // Without a clock the worker's answer alone is waited for.
        drop(timed);
    })
}

fn reply_of(data: &JsValue) -> Option<Reply> {
    let field = |name: &str| Reflect::get(data, &name.into()).ok();
    Some(Reply {
        ready: field("ready")?.as_bool()?,
        build: field("digest")?.as_string().unwrap_or_default(),
        missing: Array::from(&field("missing")?).length(),
    })
}

fn message(kind: &str) -> Option<JsValue> {
    let message = Object::new();
    Reflect::set(&message, &"type".into(), &kind.into()).ok()?;
    Some(message.into())
}

/// Absent in private windows of some browsers and outside secure contexts.
fn container() -> Option<ServiceWorkerContainer> {
    let navigator = web_sys::window()?.navigator();
    let there = Reflect::get(&navigator, &"serviceWorker".into()).ok()?;
    there.dyn_into().ok()
}

fn words_of(thrown: &JsValue) -> String {
    match thrown.dyn_ref::<js_sys::Error>() {
        Some(error) => String::from(error.message()),
        None => thrown
            .as_string()
            .unwrap_or_else(|| "no reason given".to_owned()),
    }
}

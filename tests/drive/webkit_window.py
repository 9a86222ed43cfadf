"""A window of WebKitGTK for WebKitWebDriver to drive, whose storage stays in a folder.

MiniBrowser throws its storage away at the end of every automated session, and what is asked of the book is what
remains after the end. Called with the folders for storage and for downloads, and whether what is stored is kept there
(`kept`) or forgotten at the end as a private window forgets it (`private`).
"""

import os
import sys

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import GLib, Gtk, WebKit2  # noqa: E402

STORAGE, DOWNLOADS, KEPT = sys.argv[1:4]
EARLY = os.path.join(STORAGE, "before-each-page.js")


def web_context():
    context = WebKit2.WebContext.new_ephemeral() if KEPT == "private" else keeping_context()
    context.set_automation_allowed(True)
    context.connect("automation-started", on_automation_started)
    context.connect("download-started", on_download_started)
    return context


def keeping_context():
    manager = WebKit2.WebsiteDataManager(base_data_directory=STORAGE, base_cache_directory=STORAGE)
    return WebKit2.WebContext(website_data_manager=manager)


def on_automation_started(context, session):
    session.connect("create-web-view", lambda *_: new_view(context))


def new_view(context):
    view = WebKit2.WebView(web_context=context, is_controlled_by_automation=True)
    # There is no graphics card here, and drawing as one would costs more than drawing.
    view.get_settings().set_hardware_acceleration_policy(WebKit2.HardwareAccelerationPolicy.NEVER)
    window = Gtk.Window()
    window.set_default_size(900, 1000)
    window.add(view)
    window.show_all()
    view.connect("close", lambda _: window.destroy())
    view.connect("decide-policy", on_decide_policy)
    return view


def on_decide_policy(view, _decision, _kind):
    """Just before a page is loaded: from now on the script runs first in it, if there is one."""
    manager = view.get_user_content_manager()
    manager.remove_all_scripts()
    if os.path.exists(EARLY):
        with open(EARLY, encoding="utf-8") as early:
            manager.add_script(early_script(early.read()))
    return False


def early_script(source):
    frames = WebKit2.UserContentInjectedFrames.TOP_FRAME
    moment = WebKit2.UserScriptInjectionTime.START
    return WebKit2.UserScript.new(source, frames, moment, None, None)


def on_download_started(_context, download):
    download.connect("decide-destination", on_decide_destination)


def on_decide_destination(download, name):
    download.set_destination(GLib.filename_to_uri(os.path.join(DOWNLOADS, name), None))
    return True


CONTEXT = web_context()
Gtk.main()

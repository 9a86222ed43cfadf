//! Which tests run on which engine, and why some do not. What is not named here runs on Chromium alone.
//!
//! A row is one test; its columns are Chromium, Firefox and WebKitGTK. A reason in the place of `runs` skips the test
//! there: the run says so by name, and counts it neither as passed nor as failed.

macro_rules! engines {
    ($($file:ident { $($test:ident [$chromium:tt $firefox:tt $webkit:tt])* })*) => {
        $(mod $file {
            mod chromium { $(on!(Chromium $chromium $file $test);)* }
            mod firefox { $(on!(Firefox $firefox $file $test);)* }
            mod webkit { $(on!(WebKit $webkit $file $test);)* }
        })*
    };
}

macro_rules! on {
    ($engine:ident runs $file:ident $test:ident) => {
        #[tokio::test]
        async fn $test() {
            crate::$file::$test(cartside_tests::drive::Engine::$engine).await;
        }
    };
    ($engine:ident $because:literal $file:ident $test:ident) => {
        #[tokio::test]
        #[ignore = $because]
        async fn $test() {
            crate::$file::$test(cartside_tests::drive::Engine::$engine).await;
        }
    };
}

engines! {
    main_line {
        a_gap_measured_in_a_barn_reaches_another_device [runs runs runs]
    }
    rested {
        nothing_of_the_test_before_is_left [runs runs runs]
    }
    saving {
        saved_is_said_only_after_the_transaction_is_complete [runs runs runs]
        a_step_that_was_not_stored_is_trouble_and_leaves_nothing [runs runs runs]
        what_was_said_to_be_saved_outlives_a_kill [runs runs runs]
    }
    kills {
        nothing_acknowledged_is_lost_however_often_it_is_killed [runs runs runs]
    }
    tabs {
        what_is_written_in_one_tab_shows_in_the_other [runs runs runs]
    }
    typing {
        what_is_typed_outlives_a_reload_and_a_kill_until_it_is_saved [runs runs runs]
        a_number_and_a_day_outlive_a_reload_and_a_kill_until_they_are_taken [runs runs runs]
        what_is_typed_before_its_page_has_quite_arrived_is_kept [runs runs runs]
    }
    devices {
        a_clock_ten_years_off_decides_nothing [runs runs runs]
        a_device_copied_from_another_takes_a_name_of_its_own [runs runs runs]
        a_cart_begun_on_two_devices_is_shown_as_one [runs runs runs]
    }
    arriving {
        a_field_that_has_the_focus_keeps_it [runs runs runs]
    }
    trouble {
        where_storage_is_refused_it_says_so_and_takes_nothing [runs runs runs]
        in_a_private_window_it_works_and_promises_nothing [runs runs runs]
        a_lost_connection_is_opened_once_more [runs runs runs]
        a_page_left_in_the_middle_of_a_step_holds_nobody_up [runs runs runs]
        a_newer_tab_is_never_blocked_and_this_one_says_so [runs runs runs]
    }
    panic {
        a_panic_shows_the_reload_panel_and_loses_nothing [runs runs runs]
    }
    broken_files {
        a_broken_file_is_refused_and_nothing_of_it_is_stored [runs runs runs]
    }
    demonstration {
        the_demonstration_is_separate_and_cannot_be_carried_out [runs runs runs]
    }
    newer {
        a_newer_build_waits_says_so_and_takes_over_when_told [runs runs runs]
        a_newer_build_takes_over_only_when_what_is_typed_is_kept [runs runs runs]
        two_tabs_change_to_the_newer_each_in_its_own_time [runs runs runs]
        a_page_that_stays_open_looks_for_a_newer_build [runs runs runs]
        a_newer_build_that_is_not_whole_keeps_the_older [runs runs runs]
        a_first_build_that_is_not_whole_says_that_it_needs_the_network [runs runs runs]
        what_is_damaged_on_the_device_is_fetched_anew [runs runs runs]
        a_damaged_build_gives_way_to_a_newer_one [runs runs runs]
    }
}

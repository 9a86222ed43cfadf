//! Every sentence the app says, made from enums with data.

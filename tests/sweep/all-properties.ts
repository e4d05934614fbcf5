// Loads every file of properties, so that a new one need not be named anywhere.

import.meta.glob("./properties/*.ts", { eager: true });

document.documentElement.classList.add("with-script");

// Sends a file with its progress in sight. Without this script the browser sends it all the same.
document.addEventListener("submit", event => {
  const form = event.target;
  if (!form.matches("form[data-upload]") || !form.reportValidity()) {
    return;
  }
  event.preventDefault();
  const line = form.querySelector(".sending");
  const bar = line.querySelector("progress");
  const button = form.querySelector("button");
  const request = new XMLHttpRequest();
  line.hidden = false;
  button.disabled = true;
  request.upload.addEventListener("progress", sent => {
    if (sent.lengthComputable) {
      bar.max = sent.total;
      bar.value = sent.loaded;
    }
  });
  request.addEventListener("load", () => {
    const page = new DOMParser().parseFromString(request.responseText, "text/html");
    const content = page.querySelector("main");
    if (new URL(request.responseURL).pathname !== new URL(form.action).pathname || !content) {
      location.assign(request.responseURL);
      return;
    }
    document.querySelector("main").replaceWith(document.adoptNode(content));
    document.querySelector("main").focus();
  });
  request.addEventListener("error", () => {
    // the browser's own way says what is wrong
    form.removeAttribute("data-upload");
    form.submit();
  });
  request.open("POST", form.action);
  request.send(new FormData(form));
});

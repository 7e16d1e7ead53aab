;;; What emacs.test.ts has Emacs do, in a folder with lots.germ and bench.germ; init.el is the set-up of the README.
;;; Prints what it finds, each on a line: a word, then JSON.
(require 'eglot)
(require 'json)
(setq eglot-sync-connect 30
      eglot-confirm-server-initiated-edits nil)
;; There is nobody to ask.
(defalias 'y-or-n-p (lambda (&rest _) t))

(defun tell (word value) (message "%s %s" word (json-encode value)))
(defun await (what)
  (with-timeout (30 (error "Waited in vain"))
    (while (not (funcall what)) (accept-process-output nil 0.05))
    (funcall what)))
(defun problems ()
  (mapcar #'flymake-diagnostic-text (flymake-diagnostics)))
(defun here () (buffer-substring-no-properties (line-beginning-position) (line-end-position)))
(defun after (text) (goto-char (point-min)) (search-forward text))

(load (expand-file-name "init.el" (getenv "PLUMULE_SETUP")) nil t)
(find-file "bench.germ")
;; As after the first key.
(run-hooks 'post-command-hook)
(await #'eglot-managed-p)
(tell "mode" (symbol-name major-mode))
(await (lambda () (flymake-start) (>= (length (problems)) 2)))
(tell "problems" (vconcat (problems)))

(after "soak VER")
(tell "hover"
      (plist-get (plist-get (jsonrpc-request (eglot-current-server) :textDocument/hover (eglot--TextDocumentPositionParams))
                            :contents)
                 :value))
(let ((place (xref-item-location
              (car (xref-backend-definitions 'eglot (xref-backend-identifier-at-point 'eglot))))))
  (tell "definition" (vector (file-name-nondirectory (xref-location-group place)) (xref-location-line place))))

(eglot-format-buffer)
(after "sow")
(tell "formatted" (here))

(goto-char (point-max))
(insert "count V")
(pcase-let* ((`(,start ,end ,table . ,more) (eglot-completion-at-point))
             (found (all-completions (buffer-substring start end) table)))
  (tell "completions" (vconcat (mapcar #'substring-no-properties found)))
  (delete-region start end)
  (insert (car found))
  (funcall (plist-get more :exit-function) (car found) 'finished))
(tell "completed" (here))
(delete-region (line-beginning-position) (point-max))
;; As when Emacs is idle.
(eglot--signal-textDocument/didChange)

(after "soak VER")
(eglot-rename "VER-25")
(tell "renamed" (vector (buffer-substring-no-properties (point-min) (point-max))
                        (with-current-buffer (find-file-noselect "lots.germ") (buffer-string))))
(tell "refused" (condition-case refusal (progn (eglot-rename "GA3") "not at all")
                  (error (error-message-string refusal))))
(eglot-shutdown (eglot-current-server))
